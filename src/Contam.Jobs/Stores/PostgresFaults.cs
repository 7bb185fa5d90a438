using System.Net.Sockets;
using Npgsql;

namespace Contam.Jobs.Stores;

/// <summary>
/// What a PostgreSQL server or the way to it says, in our words. Codes: PostgreSQL documentation, appendix "Error Codes",
/// https://www.postgresql.org/docs/current/errcodes-appendix.html
/// </summary>
internal static class PostgresFaults
{
    private const string PasswordMend = "Give the password in PGPASSWORD or in ~/.pgpass, and look whether user and database are the ones that are meant.";

    /// <summary>The fault in our words; <c>null</c> where it is one of the program.</summary>
    /// <param name="fault">What was thrown.</param>
    /// <param name="place">The place; shown without its password.</param>
    /// <param name="hasConnected">Whether the server had let us in.</param>
    public static ShopException? Of(Exception fault, PostgresPlace place, bool hasConnected) => fault switch
    {
        PostgresException said => OfServer(said, place.Words),
        NpgsqlException { InnerException: SocketException } when !hasConnected => new ShopException(ShopFault.Server, $"no server answers at {place.Words}. Nothing was written. See whether it runs, whether it listens there, and whether its name and port are right.", fault),
        NpgsqlException { InnerException: TimeoutException } when !hasConnected => new ShopException(ShopFault.Server, $"the server at {place.Words} does not answer in time. Nothing was written. See whether it runs, and whether something stands in the way to it.", fault),
        NpgsqlException { InnerException: TimeoutException } => new ShopException(ShopFault.Locked, $"{place.Words} does not answer in time. Nothing that was acknowledged is lost. See with contam job show whether the last change is there, then do it again.", fault),
        NpgsqlException when !hasConnected && IsOfTransport(fault) => OfTransport(place.Words, fault.InnerException is { } inner ? $"{fault.Message.TrimEnd('.')}: {inner.Message}" : fault.Message, fault),
        NpgsqlException when !hasConnected => new ShopException(ShopFault.Server, $"{place.Words} lets nobody in: {WithoutStop(fault.Message)}. Nothing was written. {PasswordMend}", fault),
        NpgsqlException or SocketException => Lost(place.Words, fault),
        _ => null,
    };

    private static ShopException? OfServer(PostgresException said, string where) => said.SqlState switch
    {
        "28000" when said.MessageText.Contains("encryption", StringComparison.OrdinalIgnoreCase) || said.MessageText.Contains("SSL", StringComparison.Ordinal) => OfTransport(where, said.MessageText, said),
        "28P01" or "28000" => new ShopException(ShopFault.Server, $"{where} lets this user in neither with this password nor without. Nothing was written. {PasswordMend}", said),
        "3D000" => new ShopException(ShopFault.Missing, $"the server has no database of the name in {where}. Nothing was written. Make it with createdb, or name another with --shop.", said),
        "42501" => new ShopException(ShopFault.ReadOnly, $"this user may not do that in {where}: {WithoutStop(said.MessageText)}. Nothing was written. Let who runs the server grant it: CREATE on the database once, then USAGE on the schema contam, and SELECT, INSERT and UPDATE on its tables.", said),
        "25006" => new ShopException(ShopFault.ReadOnly, $"{where} may be read but not written now. Nothing was written. Name the server that takes changes with --shop.", said),
        "55P03" or "40001" or "40P01" or "57014" => new ShopException(ShopFault.Locked, $"{where} is held by somebody else, who does not let go of it. Nothing was written. See who is at work there, then do it again.", said),
        "53100" => new ShopException(ShopFault.Full, $"there is no room left on the server of {where}. Nothing was written, and what was there is whole. Make room on its disk, then do it again.", said),
        "53300" or "57P03" => new ShopException(ShopFault.Server, $"{where} takes nobody in just now: {WithoutStop(said.MessageText)}. Nothing was written. Do it again in a minute.", said),
        "22021" or "22P05" => new ShopException(ShopFault.Refused, $"{where} cannot keep a sign of this text: {WithoutStop(said.MessageText)}. Nothing was written. Take the sign out.", said),
        "42P01" or "42703" or "XX001" or "XX002" => new ShopException(ShopFault.Damaged, $"{where} is damaged: {WithoutStop(said.MessageText)}. Nothing was written. contam job check says where, and contam job export saves what can be read.", said),
        ['5', '7', 'P', ..] or ['0', '8', ..] => Lost(where, said),
        ['5', '3', ..] or ['5', '8', ..] => new ShopException(ShopFault.Server, $"the server of {where} is in trouble: {WithoutStop(said.MessageText)}. Nothing was written. Tell who runs it, then do it again.", said),
        _ => null,
    };

    private static bool IsOfTransport(Exception fault) =>
        fault.InnerException is System.Security.Authentication.AuthenticationException || fault.Message.Contains("SSL", StringComparison.Ordinal) || fault.Message.Contains("certificate", StringComparison.OrdinalIgnoreCase);

    private static ShopException OfTransport(string where, string message, Exception fault) => new(
        ShopFault.Server,
        $"the transport to {where} cannot be agreed on: {WithoutStop(message)}. Nothing was written; no password was asked for. See with who runs the server whether it offers a secured transport and by which certificate (?sslmode=, ?sslrootcert= in the address).",
        fault);

    // Whether the change was taken before the line broke cannot be known from here.
    private static ShopException Lost(string where, Exception fault) => new(
        ShopFault.Server,
        $"the connection to {where} broke. Nothing that was acknowledged is lost. See with contam job show whether the last change is there, then do it again.",
        fault);

    private static string WithoutStop(string message) => message.TrimEnd('.');
}
