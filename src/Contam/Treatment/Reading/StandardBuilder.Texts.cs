using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Treatment.Reading;

/// <summary>How steps are worded.</summary>
internal sealed partial class StandardBuilder
{
    private ImmutableArray<StepWording> ReadTexts() =>
    [
        .. form.Get(TextKeys.Texts, []).Select(written => new StepWording(
            BearsOnOf(written.Value, TextKeys.For),
            written.Value.Get(TextKeys.Say, ""),
            written.Value.Get(TextKeys.Until, ""),
            written.Value.Get(TextKeys.StopIf, ""),
            written.Place)
        {
            Method = MethodOf(written.Value),
            Needs = NeedsOf(written.Value),
        }),
    ];

    private ImmutableArray<Method> ReadMethods() =>
    [
        .. form.Get(TextKeys.Methods, []).Select(written => new Method(
            written.Value.Get(TextKeys.Id, ""),
            BearsOnOf(written.Value, TextKeys.For),
            written.Value.Get(TextKeys.Title, ""),
            written.Value.Get(TextKeys.Say, ""),
            written.Value.Get(TextKeys.Until, ""),
            written.Value.Get(TextKeys.StopIf, ""),
            written.Place)
        {
            Needs = NeedsOf(written.Value),
        }),
    ];

    private ImmutableArray<FrameStep> ReadFrame()
    {
        if (!form.TryGet(TextKeys.Frame, out Form? frame))
            return [];
        return
        [
            .. TextKeys.FrameSections.SelectMany(section => frame.Get(section.Key, []).Select(written => new FrameStep(
                section.Section,
                written.Value.Get(TextKeys.Step, ""),
                BearsOnOf(written.Value, TextKeys.For),
                written.Value.Get(TextKeys.Say, ""),
                written.Value.Get(TextKeys.Until, ""),
                written.Value.Get(TextKeys.StopIf, ""),
                written.Place)
            {
                Minutes = written.Value.Find(TextKeys.Minutes),
                Due = written.Value.Get(TextKeys.Due, FrameDue.BeforeRunning),
                Method = MethodOf(written.Value),
                Needs = NeedsOf(written.Value),
            })),
        ];
    }

    private string? MethodOf(Form written)
    {
        if (written.Locate(TextKeys.Uses) is not Located<string> id)
            return null;
        if (!known.Methods.Contains(id.Value) && Sections.IsWhole(form, TextKeys.Methods))
            problems.Add(StandardProblems.UnknownMethod(id.Place, id.Value, problems.NearTo(id.Value, known.Methods)));
        return id.Value;
    }

    private static Needs NeedsOf(Form written) => !written.Has(TextKeys.Tools) && !written.Has(TextKeys.Supplies) && !written.Has(TextKeys.Hands) ? Needs.Nothing : new Needs(
        [.. written.Get(TextKeys.Tools, []).Select(tool => tool.Value)],
        [
            .. written.Get(TextKeys.Supplies, []).Select(supply => new Supply(
                supply.Value.Get(TextKeys.Item, ""),
                supply.Value.Get(TextKeys.Quantity, 1),
                supply.Value.TryGet(TextKeys.Unit, out string? unit) ? unit : null,
                supply.Value.Get(TextKeys.Per, SupplyPer.Part))),
        ],
        written.Get(TextKeys.Hands, 1));
}
