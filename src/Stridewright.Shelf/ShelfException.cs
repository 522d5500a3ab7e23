namespace Stridewright.Shelf;

/// <summary>Why the shelf did not do what was asked.</summary>
public enum ShelfFault
{
    /// <summary>The folder or the file cannot be used.</summary>
    Unusable,

    /// <summary>There is no such document or version.</summary>
    Missing,

    /// <summary>What was given cannot be kept.</summary>
    Refused,
}

/// <summary>The shelf did not do what was asked; the message says why and what to do.</summary>
public sealed class ShelfException : Exception
{
    public ShelfException()
        : this("") { }

    public ShelfException(string message)
        : this(ShelfFault.Unusable, message) { }

    public ShelfException(string message, Exception inner)
        : base(message, inner) => Fault = ShelfFault.Unusable;

    public ShelfException(ShelfFault fault, string message)
        : base(message) => Fault = fault;

    public ShelfFault Fault { get; }
}
