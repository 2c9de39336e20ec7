using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>
/// Connections that have not shown the cookie yet. There is room for a few: when one more comes, the one that has waited longest is closed. So another user
/// of this computer cannot keep the owner out by opening connections and saying nothing.
/// </summary>
/// <param name="most">How many may wait.</param>
internal sealed class WaitingRoom(int most)
{
    private readonly Lock gate = new();
    private readonly LinkedList<ConnectionContext> waiting = [];

    /// <summary>Takes a new connection in.</summary>
    /// <param name="connection">The connection.</param>
    /// <param name="next">What serves it.</param>
    public async Task Enter(ConnectionContext connection, ConnectionDelegate next)
    {
        ConnectionContext? longest = null;
        lock (gate)
        {
            connection.Items[this] = waiting.AddLast(connection);
            if (waiting.Count > most)
            {
                longest = waiting.First!.Value;
                Leave(longest);
            }
        }

        longest?.Abort(new ConnectionAbortedException("It waited without showing who it is, and others came."));
        try
        {
            await next(connection).ConfigureAwait(false);
        }
        finally
        {
            lock (gate)
                Leave(connection);
        }
    }

    /// <summary>Lets the connection of a request that was admitted out of the waiting.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public Task Admitted(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IConnectionItemsFeature>()?.Items is { } items && items.TryGetValue(this, out var place) && place is LinkedListNode<ConnectionContext> node)
        {
            lock (gate)
                Leave(node.Value);
        }

        return next(context);
    }

    private void Leave(ConnectionContext connection)
    {
        if (connection.Items.TryGetValue(this, out var place) && place is LinkedListNode<ConnectionContext> { List: not null } node)
            waiting.Remove(node);
    }
}
