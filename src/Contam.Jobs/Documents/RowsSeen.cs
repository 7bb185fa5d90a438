using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using Contam.Jobs.Stores;

namespace Contam.Jobs.Documents;

/// <summary>All rows that went by, told apart from any others, in whatever order: databases sort texts by rules of their own.</summary>
internal sealed class RowsSeen
{
    private readonly byte[] together = new byte[SHA256.HashSizeInBytes];
    private long rows;

    public void Add(ShopTable table, object[] row)
    {
        var bytes = new List<byte>();
        foreach (object value in row.Prepend(table.Name))
        {
            byte[] text = Encoding.UTF8.GetBytes(Convert.ToString(value, CultureInfo.InvariantCulture) ?? "");
            // Length before text, so that no two rows have the same bytes.
            bytes.AddRange(BitConverter.GetBytes(text.Length));
            bytes.AddRange(text);
        }

        byte[] hash = SHA256.HashData(CollectionsMarshal.AsSpan(bytes));
        // No row is there twice, so none takes another out.
        for (int at = 0; at < hash.Length; at++)
            together[at] ^= hash[at];
        rows++;
    }

    public bool IsSameAs(RowsSeen other) => rows == other.rows && together.AsSpan().SequenceEqual(other.together);
}
