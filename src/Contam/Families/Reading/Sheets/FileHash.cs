using System.Buffers.Binary;
using System.Numerics;
using System.Security.Cryptography;

namespace Contam.Families.Reading.Sheets;

/// <summary>
/// SHA-256 (FIPS 180-4) of what was read. On many systems the platform's own comes with a large library whose loading takes as long as a whole empty
/// program; a family is hashed sooner without it. What is large goes to the platform, which is faster by the byte.
/// </summary>
internal static class FileHash
{
    /// <summary>The first bits of the cube roots of the first 64 primes.</summary>
    private static readonly uint[] Rounds =
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    /// <summary>From this many bytes on the platform's own is worth loading.</summary>
    internal const int Large = 1 << 20;

    private const int BlockBytes = 64;
    private const int LengthBytes = 8;

    /// <summary>SHA-256 in lower-case hexadecimal.</summary>
    public static string Of(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(bytes.Length < Large ? Here(bytes) : ByThePlatform(bytes));

    // A method of its own, so that nothing of the platform's is loaded where it is not asked.
    private static byte[] ByThePlatform(ReadOnlySpan<byte> bytes) => SHA256.HashData(bytes);

    private static byte[] Here(ReadOnlySpan<byte> bytes)
    {
        Span<uint> state = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];
        int whole = bytes.Length / BlockBytes * BlockBytes;
        for (int at = 0; at < whole; at += BlockBytes)
            Take(state, bytes[at..(at + BlockBytes)]);

        // What is left, a single set bit, zeros, and the length in bits at the end of a block.
        Span<byte> last = stackalloc byte[2 * BlockBytes];
        last.Clear();
        int left = bytes.Length - whole;
        bytes[whole..].CopyTo(last);
        last[left] = 0x80;
        int end = left + 1 + LengthBytes <= BlockBytes ? BlockBytes : 2 * BlockBytes;
        BinaryPrimitives.WriteUInt64BigEndian(last[(end - LengthBytes)..], (ulong)bytes.Length * 8);
        for (int at = 0; at < end; at += BlockBytes)
            Take(state, last[at..(at + BlockBytes)]);

        byte[] hash = new byte[32];
        for (int i = 0; i < state.Length; i++)
            BinaryPrimitives.WriteUInt32BigEndian(hash.AsSpan(i * 4), state[i]);
        return hash;
    }

    private static void Take(Span<uint> state, ReadOnlySpan<byte> block)
    {
        Span<uint> words = stackalloc uint[64];
        for (int i = 0; i < 16; i++)
            words[i] = BinaryPrimitives.ReadUInt32BigEndian(block[(i * 4)..]);
        unchecked
        {
            for (int i = 16; i < 64; i++)
            {
                uint early = words[i - 15];
                uint late = words[i - 2];
                words[i] = words[i - 16] + words[i - 7]
                    + (BitOperations.RotateRight(early, 7) ^ BitOperations.RotateRight(early, 18) ^ (early >> 3))
                    + (BitOperations.RotateRight(late, 17) ^ BitOperations.RotateRight(late, 19) ^ (late >> 10));
            }

            (uint a, uint b, uint c, uint d) = (state[0], state[1], state[2], state[3]);
            (uint e, uint f, uint g, uint h) = (state[4], state[5], state[6], state[7]);
            for (int i = 0; i < 64; i++)
            {
                uint one = h + (BitOperations.RotateRight(e, 6) ^ BitOperations.RotateRight(e, 11) ^ BitOperations.RotateRight(e, 25)) + ((e & f) ^ (~e & g)) + Rounds[i] + words[i];
                uint two = (BitOperations.RotateRight(a, 2) ^ BitOperations.RotateRight(a, 13) ^ BitOperations.RotateRight(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
                (h, g, f, e, d, c, b, a) = (g, f, e, d + one, c, b, a, one + two);
            }

            state[0] += a;
            state[1] += b;
            state[2] += c;
            state[3] += d;
            state[4] += e;
            state[5] += f;
            state[6] += g;
            state[7] += h;
        }
    }
}
