namespace Contam.Cli.Tests;

public class Failures_in_pairs
{
    private const string Outboard = "systems/families/estuary-v6-outboard.yaml";
    private const string Gearcase = "systems/families/outboard-gearcase.yaml";

    [Theory]
    [InlineData("compressor=metl", "there is no debris metl. Did you mean metal? The standard knows metal, rubber, water.")]
    [InlineData("compressor=nothng", "there is no debris nothng. Did you mean nothing? The standard knows metal, rubber, water.")]
    [InlineData("compressor=metal:5", "--failed compressor=metal:5: `5` has no unit. A length is written in um, mm, m, thou or in.")]
    [InlineData("compressor=metal:0um", "--failed compressor=metal:0um: the largest piece seen has a size above zero. Leave the size out, or write nothing where nothing was shed.")]
    [InlineData("compressor=nothing:5um", "--failed compressor=nothing:5um: what shed nothing has no size. Leave it out.")]
    [InlineData("compressor=water:5um", "--failed compressor=water:5um: water has no size. Leave it out.")]
    [InlineData("compressor=nothing --failed compressor=metal", "compressor cannot have shed nothing and metal. Leave one of the two out.")]
    [InlineData("compressor=metal --failed compressor=nothing", "compressor cannot have shed nothing and metal. Leave one of the two out.")]
    [InlineData("compressor=nothing,metal", "compressor cannot have shed nothing and metal. Leave one of the two out.")]
    [InlineData("compressor=metal:5mm --failed compressor=metal:3mm", "compressor is said to have shed metal of up to 5000 µm and of up to 3000 µm. Write the largest piece that was seen, once.")]
    [InlineData("compressor=metal --failed compressor=metal:3mm", "compressor is said to have shed metal of no size said and of up to 3000 µm. Write the largest piece that was seen, once.")]
    [InlineData("compressor --failed compressor=metal", "compressor stands in --failed with what it shed and without. Leave one of the two out.")]
    [InlineData("compressor=metal --failed compressor", "compressor stands in --failed with what it shed and without. Leave one of the two out.")]
    [InlineData("compresor=metal", "there is no part compresor in estuary-v6-outboard. Did you mean compressor? contam parts systems/families/estuary-v6-outboard.yaml lists them.")]
    [InlineData("=nothing", "--failed =nothing names no part. Write --failed PART=nothing.")]
    [InlineData("compressor=", "--failed compressor= does not say what it shed. Write --failed compressor=metal, with the largest piece seen compressor=metal:500um, or compressor=nothing.")]
    [InlineData("compressor=metal,compressor-belt=rubber", "--failed compressor=metal,compressor-belt=rubber names several parts. What a part shed is said for one part at a time: write --failed again for each, for instance --failed compressor=metal --failed belt=rubber.")]
    [InlineData("compressor=metal --debris rubber", "--debris rubber is for parts of which --failed does not say what they shed, and every part here says it. Leave it out, or write it with its part: --failed compressor=rubber.")]
    public void That_make_no_sense_are_refused_with_what_to_write(string failed, string expected)
    {
        CommandSession session = CommandSession.Of($"plan {Outboard} --failed {failed}");

        Assert.Equal((2, "", $"contam: {expected}\n"), (session.Exit, session.Out, session.Error));
    }

    [Theory]
    [InlineData("stop-line", "there is nothing to look for")]
    [InlineData("looks", "there is nothing to look for")]
    [InlineData("drill", "there is nothing to follow")]
    [InlineData("why --part pinion", "no debris gets anywhere")]
    public void Of_which_none_shed_anything_leave_nothing_to_ask(string words, string so)
    {
        CommandSession session = CommandSession.Of($"{words} {Gearcase} --failed propeller-shaft=nothing");

        Assert.Equal((2, $"contam: nothing that failed shed anything and nothing was found, so that {so}. contam plan says how what failed is made good.\n"), (session.Exit, session.Error));
    }

    [Fact]
    public void Of_which_none_shed_anything_leave_no_place_to_look_at()
    {
        CommandSession session = CommandSession.Of($"plan {Gearcase} --failed propeller-shaft=nothing --look-at gear-housing");

        Assert.Equal((2, "contam: --look-at: nothing was shed and nothing was found, so that a look decides nothing. Name other places, or leave the option out to have them chosen.\n"), (session.Exit, session.Error));
    }

    [Fact]
    public void Make_a_belt_no_source_of_metal()
    {
        CommandSession own = CommandSession.Of($"why {Outboard} --failed compressor=metal --failed compressor-belt=rubber --part compressor-belt --debris metal");
        CommandSession cross = CommandSession.Of($"why {Outboard} --failed compressor,compressor-belt --debris metal --part compressor-belt");

        Assert.StartsWith("Compressor belt: clear of metal\n", own.Out, StringComparison.Ordinal);
        Assert.StartsWith("Compressor belt: exposed to metal", cross.Out, StringComparison.Ordinal);
        Assert.Equal(("", "contam: The family does not say that the compressor belt sheds metal; it is taken to have shed it, of any size.\n"), (own.Error, cross.Error));
    }

    [Fact]
    public void Take_what_debris_says_where_a_part_does_not()
    {
        CommandSession session = CommandSession.Of($"plan {Outboard} --failed compressor=metal:500um --failed compressor-belt --debris rubber");

        Assert.StartsWith("Clean-out: Compressor belt (rubber), Injection air compressor (metal up to 500\nµm) failed\n", session.Out, StringComparison.Ordinal);
        Assert.Contains("“not B”:\ndone unless debris was found at B.", session.Out, StringComparison.Ordinal);
        Assert.Contains("The injection air compressor is taken to have shed metal of up to 500 µm, as was\nseen; the family says up to 3000 µm. That spares nothing.\n", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_which_none_shed_anything_are_made_good_and_nothing_is_cleaned()
    {
        CommandSession session = CommandSession.Of($"plan {Gearcase} --failed propeller-shaft=nothing");

        Assert.StartsWith("Clean-out: Propeller shaft (nothing shed) failed\n", session.Out, StringComparison.Ordinal);
        Assert.Contains("0 parts can be reached, 32 cannot; 1 part renewed", session.Out, StringComparison.Ordinal);
        Assert.Contains("Find why propeller shaft failed and put it right.", session.Out, StringComparison.Ordinal);
        Assert.Contains("Failed, with no debris at it: made good (1)\n  replace                   propeller shaft\n", session.Out, StringComparison.Ordinal);
    }
}
