using System.Collections;
using System.Runtime.CompilerServices;

namespace Stridewright.Music;

/// <summary>An immutable list that is equal to another when its items are, in order.</summary>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public sealed class ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly T[] _items;

    internal ValueList(T[] items) => _items = items;

    /// <summary>The list without items.</summary>
    public static ValueList<T> Empty { get; } = new([]);

    public int Count => _items.Length;

    public T this[int index] => _items[index];

    public ReadOnlySpan<T> AsSpan() => _items;

    public bool Equals(ValueList<T>? other) =>
        other is not null && (ReferenceEquals(this, other) || _items.AsSpan().SequenceEqual(other._items));

    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in _items)
        {
            hash.Add(item);
        }
        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public override string ToString() => "[" + string.Join(", ", _items) + "]";
}

/// <summary>Makes value lists.</summary>
public static class ValueList
{
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) =>
        items.IsEmpty ? ValueList<T>.Empty : new(items.ToArray());

    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        if (items is ValueList<T> list)
        {
            return list;
        }
        var copy = items.ToArray();
        return copy.Length == 0 ? ValueList<T>.Empty : new(copy);
    }
}
