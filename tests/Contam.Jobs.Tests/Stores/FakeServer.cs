using System.Globalization;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Contam.Jobs.Tests.Stores;

/// <summary>
/// Something that listens where a server should be, and does with the first line to it what it is made to do. It keeps every byte that it was sent outside a
/// secured transport, so that a test sees whether a password was among them.
/// Source of the first message (length 8, code 80877103) and its answers S and N: PostgreSQL documentation, "SSL Session Encryption",
/// https://www.postgresql.org/docs/current/protocol-flow.html
/// </summary>
internal sealed class FakeServer : IDisposable
{
    private static readonly byte[] AsksForTransport = [0, 0, 0, 8, 0x04, 0xD2, 0x16, 0x2F];

    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly int port;
    private readonly Task work;

    private FakeServer(Func<NetworkStream, Task<bool>> serve)
    {
        listener.Start();
        port = ((IPEndPoint)listener.LocalEndpoint).Port;
        work = Task.Run(async () =>
        {
            // Who comes and goes without a word comes back.
            for (bool isServed = false; !isServed;)
            {
                using TcpClient client = await listener.AcceptTcpClientAsync();
                isServed = await serve(client.GetStream());
            }

            listener.Stop();
        });
    }

    public string Address(string query = "") => string.Create(CultureInfo.InvariantCulture, $"postgres://ada@127.0.0.1:{port}/shop{query}");

    /// <summary>Whether it was asked for a secured transport, and then sent nothing more in the clear.</summary>
    public bool WasAskedForTransportAlone { get; private set; }

    /// <summary>Takes the line, says nothing, and lets go of it when the task ends.</summary>
    public static FakeServer Silent(Action taken, Task letGo) => new(async _ =>
    {
        taken();
        await letGo;
        return true;
    });

    /// <summary>Refuses a secured transport.</summary>
    public static FakeServer WithoutTransport()
    {
        FakeServer? server = null;
        server = new FakeServer(async stream =>
        {
            if (await Asked(stream) is not { } asked)
                return false;
            await stream.WriteAsync("N"u8.ToArray());
            server!.WasAskedForTransportAlone = asked && await IsOver(stream);
            return true;
        });
        return server;
    }

    /// <summary>Shows a certificate that it made itself.</summary>
    public static FakeServer WithItsOwnCertificate()
    {
        FakeServer? server = null;
        server = new FakeServer(async stream =>
        {
            if (await Asked(stream) is not { } asked)
                return false;
            await stream.WriteAsync("S"u8.ToArray());
            using var key = ECDsa.Create();
            using X509Certificate2 certificate = new CertificateRequest("CN=somebody", key, HashAlgorithmName.SHA256).CreateSelfSigned(DateTimeOffset.UnixEpoch, DateTimeOffset.MaxValue);
            using var secured = new SslStream(stream);
            try
            {
                await secured.AuthenticateAsServerAsync(certificate);
                server!.WasAskedForTransportAlone = asked && await IsOver(secured);
            }
            catch (Exception refused) when (refused is AuthenticationException or IOException)
            {
                server!.WasAskedForTransportAlone = asked;
            }

            return true;
        });
        return server;
    }

    /// <summary>Waits until it has done its work.</summary>
    public void Finish() => work.GetAwaiter().GetResult();

    public void Dispose() => listener.Dispose();

    // Nothing where the line ends without a word.
    private static async Task<bool?> Asked(NetworkStream stream)
    {
        byte[] first = new byte[AsksForTransport.Length];
        int length = await stream.ReadAtLeastAsync(first, first.Length, throwOnEndOfStream: false);
        return length == 0 ? null : length == first.Length && first.AsSpan().SequenceEqual(AsksForTransport);
    }

    // Whoever asked hangs up, and sends nothing more.
    private static async Task<bool> IsOver(Stream stream)
    {
        try
        {
            return await stream.ReadAsync(new byte[1]) == 0;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
