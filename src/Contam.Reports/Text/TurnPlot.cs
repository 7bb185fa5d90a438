using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Gauging;

namespace Contam.Reports.Text;

/// <summary>Readings round a turn as a small plot: angle to the right, the dial upward, <c>o</c> a reading, <c>·</c> the fitted wave.</summary>
internal static class TurnPlot
{
    private const int Rows = 9;
    private const int LabelColumns = 12;
    private const int MostColumns = 61;

    /// <summary>Writes the plot under a heading; nothing where there are fewer than three readings, which show no turn.</summary>
    public static void Write(TextPage page, TextWriter writer, GaugeAnswer answer)
    {
        if (answer.Round.Length < 3 || answer.Unit is not { } unit)
            return;
        page.Heading("Round the turn");
        foreach (string line in Lines(answer, unit, Math.Min(MostColumns, page.Width - LabelColumns - 4)))
            writer.Write(line.TrimEnd(' ') + "\n");
        page.Paragraph(answer.Shape is null ? "o reading" : "o reading   · once and twice per turn fitted together", indent: LabelColumns);
    }

    private static IEnumerable<string> Lines(GaugeAnswer answer, ReadingUnit unit, int columns)
    {
        double[] wave = answer.Shape is { } shape ? [.. Enumerable.Range(0, columns).Select(x => shape.At(AngleAt(x, columns)).Metres)] : [];
        double[] readings = [.. answer.Round.Select(one => one.Reading.Metres)];
        double low = readings.Concat(wave).Min();
        double high = readings.Concat(wave).Max();
        var grid = new char[Rows, columns];
        for (int x = 0; x < wave.Length; x++)
            grid[RowOf(wave[x], low, high), x] = '·';
        foreach (RunOutReading one in answer.Round)
            grid[RowOf(one.Reading.Metres, low, high), ColumnOf(one.At, columns)] = 'o';
        for (int row = 0; row < Rows; row++)
        {
            string label = row == 0 ? Label(high, unit) : row == Rows - 1 ? Label(low, unit) : row == Rows / 2 ? Label((high + low) / 2, unit) : "";
            yield return label.PadLeft(LabelColumns) + " |" + new string([.. Enumerable.Range(0, columns).Select(x => grid[row, x] == '\0' ? ' ' : grid[row, x])]);
        }

        yield return new string(' ', LabelColumns) + " +" + new string('-', columns);
        yield return new string(' ', LabelColumns + 2) + Marks(columns);
    }

    private static string Marks(int columns)
    {
        var marks = new char[columns + 4];
        Array.Fill(marks, ' ');
        foreach (int degrees in (ReadOnlySpan<int>)[0, 90, 180, 270, 360])
        {
            string text = degrees.ToString(System.Globalization.CultureInfo.InvariantCulture) + "°";
            int at = Math.Max(0, ((columns - 1) * degrees / 360) - (text.Length / 2));
            text.CopyTo(0, marks, at, text.Length);
        }

        return new string(marks);
    }

    private static string Label(double metres, ReadingUnit unit) => $"{GaugeText.Number(unit.Of(metres))} {unit.Symbol}";

    private static int RowOf(double value, double low, double high) =>
        high > low ? (int)Math.Round((high - value) / (high - low) * (Rows - 1)) : Rows / 2;

    private static Angle AngleAt(int column, int columns) => Angle.FromDegrees(360.0 * column / (columns - 1));

    private static int ColumnOf(Angle angle, int columns) => (int)Math.Round(angle.WithinTurn().Degrees / 360 * (columns - 1));
}
