namespace Contam.Cli.Tests;

/// <summary>Sessions of <c>contam stop-line</c>.</summary>
public class A_stop_line
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";

    [Fact]
    public void For_metal_from_the_injection_pump() => Answers(
        $"stop-line {Diesel} --failed injection-pump --debris metal",
        """
        Stop line: High-pressure injection pump failed, metal
        Four-cylinder harbour-launch diesel with common-rail injection
        (harbour-diesel-i4)
        2 looks (30 min). If all are clean, 30 parts can be left alone. Work saved: 940
        min, 15.7 h.

        LOOK HERE, NEAREST TO THE FAILURE FIRST
          [ ] 1 Rail (20 min): take out the pressure valve and draw a white swab through
                the bore
                Clean, it is left alone itself, and so are turbocharger turbine wheel
                and housing, cylinder 1–4, exhaust valve 1–4, exhaust manifold, exhaust
                elbow with water injection, exhaust hose, silencer, rail pressure valve,
                injector pipe 1–4, nozzle tip of an injector 1–4, injector return rail.
          [ ] 2 Return hose to the tank (10 min): take it off at the tank and run half a
                litre into a clear jar
                Clean, it is left alone itself, and so are fuel tank, feed hose, water
                separator, lift pump, fuel filter.

        WHAT IS TREATED ALTHOUGH ALL LOOKS ARE CLEAN
          Failed              High-pressure injection pump (165 min, 2.8 h)
          Critical            Injector 1–4 (180 min, 3.0 h)
          Before the line     Drive shaft seal of the injection pump, delivery pipe from
                              pump to rail, return pipe from the pump (65 min)

        WORK
          Looks               30 min
          Treatment           410 min, 6.8 h
          Without looking     1380 min, 23.0 h
          Saved               940 min, 15.7 h
          At the parts themselves. What is in the way of a look is counted with it, what
          is in the way of a treatment is not, so the saving is rather too low than too
          high. Waiting for parts and workshops is not counted.

        BE CAREFUL
          A clean look counts only where metal that is there would have been seen: good
          light, every face looked at, nothing wiped away before. In doubt it is not
          clean.
          All of the looks, not some: each that is left out or doubtful puts what lies
          beyond it back on the list.
          All clean? Add --clean rail --clean return-hose and plan again.
          Found metal at one of them? Stop, and ask again with --found PART=metal: the
          line then lies further out.
        """);

    [Fact]
    public void Once_the_rail_was_clean_and_the_return_hose_was_not() => Answers(
        $"stop-line {Diesel} --failed injection-pump --debris metal --clean rail --found return-hose=metal",
        """
        Stop line: High-pressure injection pump failed, metal
        Four-cylinder harbour-launch diesel with common-rail injection
        (harbour-diesel-i4)
        1 look (15 min). If it is clean, 5 parts can be left alone. Work saved: 375 min,
        6.3 h.

        LOOK HERE, NEAREST TO THE FAILURE FIRST
          [ ] 1 Fuel tank (15 min): draw a litre from the lowest point into a clear jar
                and let it stand
                Clean, it is left alone itself, and so are feed hose, water separator,
                lift pump, fuel filter.

        WHAT IS TREATED ALTHOUGH ALL LOOKS ARE CLEAN
          Failed              High-pressure injection pump (165 min, 2.8 h)
          Debris found there  Return hose to the tank (40 min)
          Critical            Injector 1–4 (180 min, 3.0 h)
          Before the line     Drive shaft seal of the injection pump, delivery pipe from
                              pump to rail, return pipe from the pump (65 min)
          Cleared already,    Turbocharger turbine wheel and housing, cylinder 1–4,
          left alone          exhaust valve 1–4, exhaust manifold, exhaust elbow with
                              water injection, exhaust hose, silencer, rail, rail
                              pressure valve, injector pipe 1–4, nozzle tip of an
                              injector 1–4, injector return rail

        WORK
          Looks               15 min
          Treatment           450 min, 7.5 h
          Without looking     840 min, 14.0 h
          Saved               375 min, 6.3 h
          At the parts themselves. What is in the way of a look is counted with it, what
          is in the way of a treatment is not, so the saving is rather too low than too
          high. Waiting for parts and workshops is not counted.

        BE CAREFUL
          A clean look counts only where metal that is there would have been seen: good
          light, every face looked at, nothing wiped away before. In doubt it is not
          clean.
          All clean? Add --clean fuel-tank and plan again.
          Found metal there? Stop, and ask again with --found PART=metal: the line then
          lies further out.
        """);

    [Fact]
    public void For_two_sorts_of_debris_of_which_one_is_on_record() => Answers(
        $"stop-line {Diesel} --failed injection-pump --debris metal,water --clean rail=metal --found return-hose=water",
        """
        Stop line: High-pressure injection pump failed, metal and water
        Four-cylinder harbour-launch diesel with common-rail injection
        (harbour-diesel-i4)
        2 looks (35 min). If all are clean, 29 parts can be left alone. Work saved: 960
        min, 16.0 h.

        LOOK HERE, NEAREST TO THE FAILURE FIRST
          [ ] 1 Fuel tank (15 min): draw a litre from the lowest point into a clear jar
                and let it stand
                Clean, it is left alone itself.
          [ ] 2 Rail (20 min): take out the pressure valve and draw a white swab through
                the bore
                Clean, it is left alone itself.
                All of them clean together also spare turbocharger turbine wheel and
                housing, cylinder 1–4, exhaust valve 1–4, exhaust manifold, exhaust
                elbow with water injection, exhaust hose, silencer, feed hose, water
                separator, lift pump, fuel filter, rail pressure valve, injector pipe
                1–4, nozzle tip of an injector 1–4, injector return rail.

        WHAT IS TREATED ALTHOUGH ALL LOOKS ARE CLEAN
          Failed              High-pressure injection pump (165 min, 2.8 h)
          Debris found there  Return hose to the tank (40 min)
          Critical            Injector 1–4 (180 min, 3.0 h)
          Before the line     Drive shaft seal of the injection pump, delivery pipe from
                              pump to rail, return pipe from the pump (70 min)

        WORK
          Looks               35 min
          Treatment           455 min, 7.6 h
          Without looking     1450 min, 24.2 h
          Saved               960 min, 16.0 h
          At the parts themselves. What is in the way of a look is counted with it, what
          is in the way of a treatment is not, so the saving is rather too low than too
          high. Waiting for parts and workshops is not counted.
          Some place is on record as clean of one debris and not of the other, so a
          choice of looks that takes less may have been missed.

        BE CAREFUL
          A clean look counts only where metal or water that is there would have been
          seen: good light, every face looked at, none of it wiped away before. In doubt
          it is not clean.
          All of the looks, not some: each that is left out or doubtful puts what lies
          beyond it back on the list.
          All clean? Add --clean fuel-tank --clean rail and plan again.
          Found metal or water at one of them? Stop, and ask again with --found
          PART=metal or what it was: the line then lies further out.
        """,
        "contam: The family does not say that the high-pressure injection pump sheds water; it is taken to have shed it.\n");

    [Fact]
    public void Where_looking_saves_nothing() => Answers(
        $"stop-line {Diesel} --failed exhaust-hose --debris metal",
        """
        Stop line: Exhaust hose failed, metal
        Four-cylinder harbour-launch diesel with common-rail injection
        (harbour-diesel-i4)
        Looking saves nothing here: no place that the debris comes by shows metal well.
        All that is reached and not cleared is treated: 2 parts.

        WHAT IS TREATED
          Failed              Exhaust hose (55 min)
          The rest            Silencer (145 min, 2.4 h)

        WORK
          Treatment           200 min, 3.3 h
          At the parts themselves. What is in the way, and waiting for parts and
          workshops, is not counted.
        """,
        "contam: The family does not say that the exhaust hose sheds metal; it is taken to have shed it, of any size.\n");

    [Fact]
    public void As_json() => Answers(
        "stop-line systems/families/outboard-gearcase.yaml --failed pinion --debris metal --format json",
        """
        {
          "format": "contam-stop-line/1",
          "looks": [
            {
              "part": "gear-housing",
              "minutes": 10,
              "inTheWay": [],
              "clears": [
                "gear-housing",
                "lower-plug",
                "upper-plug",
                "pinion-nut",
                "forward-gear",
                "reverse-gear",
                "clutch-dog",
                "shift-shaft",
                "shift-cam",
                "shift-shaft-seal",
                "propeller-shaft",
                "bearing-carrier",
                "carrier-seal",
                "propshaft-oil-seal"
              ]
            }
          ],
          "clears": [
            "gear-housing",
            "lower-plug",
            "upper-plug",
            "pinion-nut",
            "forward-gear",
            "reverse-gear",
            "clutch-dog",
            "shift-shaft",
            "shift-cam",
            "shift-shaft-seal",
            "propeller-shaft",
            "bearing-carrier",
            "carrier-seal",
            "propshaft-oil-seal"
          ],
          "clearsTogether": [],
          "clearedAlready": [],
          "treat": [
            "oil-riser",
            "driveshaft",
            "driveshaft-bearing",
            "driveshaft-oil-seal",
            "pinion",
            "pinion-bearing",
            "forward-gear-bearing",
            "reverse-gear-bearing",
            "carrier-bearing"
          ],
          "treatBecause": [
            {
              "part": "oil-riser",
              "because": "before the line",
              "minutes": 55
            },
            {
              "part": "driveshaft",
              "because": "before the line",
              "minutes": 70
            },
            {
              "part": "driveshaft-bearing",
              "because": "critical",
              "minutes": 85
            },
            {
              "part": "driveshaft-oil-seal",
              "because": "before the line",
              "minutes": 40
            },
            {
              "part": "pinion",
              "because": "failed",
              "minutes": 120
            },
            {
              "part": "pinion-bearing",
              "because": "critical",
              "minutes": 85
            },
            {
              "part": "forward-gear-bearing",
              "because": "critical",
              "minutes": 85
            },
            {
              "part": "reverse-gear-bearing",
              "because": "critical",
              "minutes": 85
            },
            {
              "part": "carrier-bearing",
              "because": "critical",
              "minutes": 85
            }
          ],
          "minutes": {
            "looks": 10,
            "treatment": 710,
            "withoutLooking": 1707,
            "saved": 987
          },
          "isLeast": true,
          "doubtful": [],
          "void": [],
          "noLookBecause": null
        }
        """);

    [Fact]
    public void Of_a_part_that_there_is_not() => Refuses(
        $"stop-line {Diesel} --failed injection-pmup --debris metal",
        $"contam: there is no part injection-pmup in harbour-diesel-i4. Did you mean injection-pump? contam parts {Diesel} lists them.");

    [Fact]
    public void When_nothing_failed() => Refuses(
        $"stop-line {Diesel} --debris metal",
        "contam: nothing has failed and nothing was found. Name the failed part with --failed PART, or say where debris was found with --found PART=DEBRIS.");

    [Fact]
    public void In_a_format_that_there_is_not()
    {
        CommandSession session = CommandSession.Of($"stop-line {Diesel} --failed injection-pump --format svg");
        Assert.Equal((2, ""), (session.Exit, session.Out));
        Assert.EndsWith("contam stop-line --help shows how it is used.\n", session.Error, StringComparison.Ordinal);
    }

    private static void Answers(string words, string expected, string note = "")
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal(note, session.Error);
        Assert.Equal(expected + "\n", session.Out);
        Assert.Equal(0, session.Exit);
    }

    private static void Refuses(string words, string expected)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal((2, "", expected + "\n"), (session.Exit, session.Out, session.Error));
    }
}
