using System.Net;
using System.Net.Sockets;
using System.Security.Claims;

namespace FormApi.Http.Callers;

/// <summary>Who calls: by the name of a key or token, or else by address.</summary>
internal static class Caller
{
    // One household or host has so much of an IPv6 address to itself.
    private const int HostBits = 64;

    /// <summary>The name of the key or token, or null.</summary>
    /// <param name="context">The request.</param>
    public static string? NameOf(HttpContext context) =>
        context.User.Identity is { IsAuthenticated: true, Name: { } name } ? name : context.User.FindFirstValue("client_id");

    /// <summary>What a caller's limits are counted by.</summary>
    /// <param name="context">The request.</param>
    public static string KeyOf(HttpContext context) =>
        NameOf(context) is { } name ? "name " + name : AddressOf(context.Connection.RemoteIpAddress);

    private static string AddressOf(IPAddress? address)
    {
        if (address is null)
            return "local";
        if (address.IsIPv4MappedToIPv6)
            address = address.MapToIPv4();
        if (address.AddressFamily == AddressFamily.InterNetwork)
            return address.ToString();
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(HostBits / 8).Clear();
        return new IPAddress(bytes).ToString();
    }
}
