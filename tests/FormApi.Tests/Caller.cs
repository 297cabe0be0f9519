using System.Net.Sockets;
using System.Text;

namespace FormApi.Tests;

/// <summary>One connection, byte by byte.</summary>
internal sealed class Caller(TcpClient connection) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly NetworkStream _stream = connection.GetStream();

    public static async Task<Caller> To(Service host)
    {
        var connection = new TcpClient { ReceiveBufferSize = 16 * 1024 };
        await connection.ConnectAsync(host.Client.BaseAddress!.Host, host.Client.BaseAddress.Port);
        return new(connection);
    }

    public Task Send(string text) => _stream.WriteAsync(Encoding.ASCII.GetBytes(text)).AsTask().WaitAsync(Patience);

    public async Task<string> ReadTo(string end)
    {
        var text = new StringBuilder();
        var buffer = new byte[4096];
        while (!text.ToString().EndsWith(end, StringComparison.Ordinal))
        {
            var count = await _stream.ReadAsync(buffer).AsTask().WaitAsync(Patience);
            if (count == 0)
                break;
            text.Append(Encoding.ASCII.GetString(buffer, 0, count));
        }

        return text.ToString();
    }

    public void CloseOwnSide() => connection.Client.Shutdown(SocketShutdown.Send);

    public void Dispose() => connection.Dispose();
}
