using System.Security.Cryptography;

namespace Stridewright.Web;

/// <summary>The last few things under ids that nobody guesses; the one that was not asked for longest goes first.</summary>
/// <param name="most">How many.</param>
internal sealed class Memory<T>(int most)
    where T : class
{
    private readonly Lock _turn = new();
    private readonly Dictionary<string, LinkedListNode<(string Id, T Thing)>> _byId = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Id, T Thing)> _byUse = new();

    public string Keep(T thing)
    {
        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(12));
        lock (_turn)
        {
            _byId[id] = _byUse.AddFirst((id, thing));
            if (_byUse is { Last: { } oldest } && _byUse.Count > most)
            {
                _byUse.RemoveLast();
                _byId.Remove(oldest.Value.Id);
            }
        }
        return id;
    }

    public T? Find(string id)
    {
        lock (_turn)
        {
            if (!_byId.TryGetValue(id, out var node))
            {
                return null;
            }
            _byUse.Remove(node);
            _byUse.AddFirst(node);
            return node.Value.Thing;
        }
    }
}
