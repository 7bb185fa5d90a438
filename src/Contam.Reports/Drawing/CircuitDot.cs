using System.Collections.Immutable;
using System.Text;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Spread;

namespace Contam.Reports.Drawing;

/// <summary>The same picture as a graph in the DOT language, for whoever lays it out elsewhere. Every text stands in quotes, with quotes and backslashes escaped.</summary>
public static class CircuitDot
{
    /// <summary>Writes the graph.</summary>
    /// <param name="family">The family.</param>
    /// <param name="spreads">How far each debris has gone; empty for the circuits alone.</param>
    /// <param name="failed">The failed parts.</param>
    /// <param name="options">What is folded and marked.</param>
    /// <param name="writer">Where it goes.</param>
    public static void Write(Family family, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, PictureOptions options, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(writer);
        PictureGraph graph = PictureGraph.Of(family, spreads, failed, options);
        writer.Write($"digraph {Quoted(family.Id)} {{\n  rankdir=LR;\n  node [shape=box, fontname=\"sans-serif\", fontsize=10];\n  edge [fontname=\"sans-serif\", fontsize=8];\n");
        for (int i = 0; i < graph.Boxes.Length; i++)
        {
            PictureBox box = graph.Boxes[i];
            string[] said = [.. new[] { box.Mark.Tag, box.Mark.IsLook ? "look here" : "" }.Where(one => one.Length > 0)];
            string label = said.Length == 0 ? box.Label : $"{box.Label} ({string.Join(", ", said)})";
            string style = box.Mark.Grade switch
            {
                "failed" => ", style=filled, fillcolor=black, fontcolor=white",
                "exposed" => ", penwidth=3",
                "guarded" => ", style=\"dashed,rounded\", penwidth=2",
                "cleared" => ", style=\"dotted,rounded\", penwidth=2",
                "clear" => ", color=gray",
                _ => "",
            };
            writer.Write($"  b{i} [label={Quoted(label)}{style}{(box.Mark.Barrier == true ? ", peripheries=2" : "")}];\n");
        }

        foreach (PictureLine line in graph.Lines)
            writer.Write($"  b{line.From} -> b{line.To} [label={Quoted(line.Waits)}, tooltip={Quoted(graph.Circuits[line.Circuit])}, color={Quoted(PictureStyle.ColourOf(line.Circuit))}{(line.Waits.Length > 0 ? ", style=dashed, constraint=false" : "")}];\n");
        writer.Write("}\n");
    }

    // A backslash begins an escape within DOT's quotes, some of them on the reader's side, so it is doubled.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char one in TextPage.Harmless(text))
            quoted.Append(one is '"' or '\\' ? "\\" : "").Append(one);
        return quoted.Append('"').ToString();
    }
}
