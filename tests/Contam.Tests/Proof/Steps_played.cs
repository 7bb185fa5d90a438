using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Support.Notation;

namespace Contam.Tests.Proof;

public class Steps_played
{
    [Fact]
    public void End_clean_where_everything_is_taken_off_cleaned_and_put_back() => Check(
        "pump[seals=ring] > hose > filter[filter]",
        "pump replace; hose clean; filter inspect",
        """
        safe
        look pump
        remove pump
        remove hose
        remove filter
        replace pump
        clean hose
        inspect filter
        refit pump seals=ring
        refit hose
        refit filter
        prove
        """);

    [Fact]
    public void End_clean_where_nothing_is_to_be_done() => Check("a > b", "", "safe; prove");

    [Fact]
    public void End_clean_where_parts_in_place_are_flushed_in_flow_order() => Check(
        "a[inplace] > b[inplace] > c[inplace]",
        "a flush; b flush; c clean",
        "flush a; flush b; clean c; prove");

    // What is left

    [Fact]
    public void Leave_a_part_dirty_that_nothing_cleans() => Check(
        "a", "a clean", "remove a; inspect a; refit a",
        "step 3: a is put back dirty",
        "when all is done: a is left dirty");

    [Fact]
    public void Leave_a_part_unseen_that_nobody_looks_at() => Check(
        "a[inplace]", "a inspect+test", "safe",
        "when all is done: a has never been looked at");

    [Fact]
    public void Leave_a_part_off_that_nobody_puts_back() => Check(
        "a", "a clean", "remove a; clean a",
        "when all is done: a is never put back");

    [Fact]
    public void Leave_a_cleared_part_as_clean_as_it_is() => Check("a > b", "a - cleared; b - cleared", "prove");

    [Fact]
    public void Take_one_treatment_that_cleans_to_make_a_part_dirty_before_it() => Check(
        "a[inplace]", "a inspect+clean", "inspect a",
        "when all is done: a is left dirty");

    [Fact]
    public void Count_only_the_last_cleaning() => Check(
        "a[inplace] > b[inplace]",
        "a flush+clean; b clean",
        "flush a blank=b; clean b; clean a",
        "step 2: b is cleaned while a, which leads into it, is still dirty");

    [Fact]
    public void Count_no_look_that_only_confirms_the_failure() => Check(
        "a[inplace]", "a inspect", "look a",
        "when all is done: a has never been looked at");

    // Off and on

    [Fact]
    public void Do_not_take_a_part_off_twice() => Check(
        "a", "a clean", "remove a; clean a; refit a; remove a; refit a",
        "step 4: a is taken off a second time",
        "step 5: a is put back a second time");

    [Fact]
    public void Do_not_put_back_what_was_never_off() => Check(
        "a[inplace]", "", "refit a",
        "step 1: a is put back although it was never taken off");

    [Fact]
    public void Do_not_put_back_what_is_not_off_yet() => Check(
        "a", "", "remove a at=0-10; refit a at=5-15 after=",
        "step 2: a is put back before it is off");

    [Fact]
    public void Do_not_put_back_what_is_dirty() => Check(
        "a", "a clean", "remove a; refit a; clean a",
        "step 2: a is put back dirty");

    [Fact]
    public void Do_not_put_back_what_nobody_has_looked_at() => Check(
        "a", "a inspect", "remove a; refit a; inspect a",
        "step 2: a is put back before it has been looked at");

    [Fact]
    public void Do_not_put_back_a_part_behind_a_dirty_one() => Check(
        "a[inplace] > b", "a clean; b clean", "remove b; clean b; refit b; clean a",
        "step 3: b is put back while a, which leads into it, is still dirty");

    [Fact]
    public void Do_not_put_back_a_part_behind_one_that_nobody_has_looked_at() => Check(
        "a[inplace] > b", "a inspect; b clean", "remove b; clean b; refit b; inspect a",
        "step 3: b is put back while a, which leads into it, has not been looked at");

    [Fact]
    public void May_put_back_a_part_behind_a_dirty_one_that_is_off() => Check(
        "a > b", "a clean; b clean", "remove a; remove b; clean b; refit b; clean a; refit a; prove");

    [Fact]
    public void May_put_back_a_part_behind_a_closed_joint() => Check(
        "a[inplace] ~ b; a >?x> b; x", "a clean; b clean", "remove b; clean b; refit b; clean a; prove");

    [Fact]
    public void Do_not_put_back_a_part_behind_a_joint_that_a_failure_opened() => CheckFailed(
        "x",
        "a[inplace] >?x> b; x", "a clean; b clean; x clean", "remove x; clean x; refit x; remove b; clean b; refit b; clean a",
        "step 6: b is put back while a, which leads into it, is still dirty");

    // What is in the way

    [Fact]
    public void Do_not_take_off_what_is_behind_another() => Check(
        "a[access=b]; b", "a clean", "remove a; clean a; refit a",
        "step 1: a is taken off while b, which is in the way, is on",
        "step 3: a is put back while b, which is in the way, is on");

    [Fact]
    public void Do_not_work_in_place_on_what_is_behind_another() => Check(
        "a[inplace access=b]; b", "a clean", "clean a; remove b; refit b",
        "step 1: a is worked on while b, which is in the way, is on");

    [Fact]
    public void May_work_on_what_is_off_whatever_was_in_its_way() => Check(
        "a[access=b]; b", "a clean", "remove b; remove a; clean a; refit a; refit b; prove");

    [Fact]
    public void Do_not_put_back_last_what_was_taken_off_last() => Check(
        "a[access=b]; b", "a clean", "remove b; remove a; clean a; refit b; refit a",
        "step 5: a is put back while b, which is in the way, is on");

    [Fact]
    public void Do_not_close_the_way_while_somebody_works_behind_it() => Check(
        "a[inplace access=b]; b", "a clean",
        "remove b; clean a at=10-40; refit b at=20-50 after=1 by=2; prove at=50-60 after=2+3",
        "step 2: a is worked on while b, which is in the way, is on");

    [Fact]
    public void Do_not_close_the_way_while_a_part_is_taken_off_behind_it() => Check(
        "a[access=b]; b", "", "remove b; remove a at=10-30; refit b at=15-25 after=1 by=2",
        "step 2: a is taken off while b, which is in the way, is on",
        "when all is done: a is never put back");

    [Fact]
    public void Do_not_close_the_way_while_a_part_is_put_back_behind_it() => Check(
        "a[access=b]; b", "", "remove b; remove a; refit a at=20-40; refit b at=25-35 after=1 by=2",
        "step 3: a is put back while b, which is in the way, is on");

    // Treatment

    [Fact]
    public void Do_not_replace_a_part_that_is_on() => Check(
        "a", "a replace", "replace a; remove a; refit a",
        "step 1: a is replaced while the old one is still on");

    [Fact]
    public void Do_not_send_out_a_part_that_is_on() => Check(
        "a", "a clean", "sendout a; remove a; clean a; refit a",
        "step 1: a is sent out while it is still on");

    [Fact]
    public void Do_not_work_on_a_part_that_is_away() => Check(
        "a", "a clean+test", "remove a; sendout a at=10-500; clean a at=20-30 after=1; test a at=500-510; refit a",
        "step 3: a is worked on while it is away");

    [Fact]
    public void Do_not_clean_in_place_behind_a_dirty_part() => Check(
        "a[inplace] > b[inplace]", "a clean; b clean", "clean b; clean a",
        "step 1: b is cleaned while a, which leads into it, is still dirty");

    [Fact]
    public void Do_not_flush_in_place_behind_a_part_that_nobody_has_looked_at() => Check(
        "a[inplace] > b[inplace]", "a inspect; b flush", "flush b; inspect a",
        "step 1: b is cleaned while a, which leads into it, has not been looked at");

    [Fact]
    public void May_look_at_a_part_behind_a_dirty_one() => Check(
        "a[inplace] > b[inplace]", "a clean; b inspect", "inspect b; clean a; prove");

    [Fact]
    public void Count_the_look_of_a_part_that_is_tested_too() => Check(
        "a[inplace] > b", "a inspect+test; b clean", "remove b; clean b; test a; refit b; inspect a",
        "step 4: b is put back while a, which leads into it, has not been looked at");

    [Fact]
    public void Count_the_test_of_a_part_that_nobody_looks_at() => Check(
        "a[inplace] > b", "a test; b clean", "remove b; clean b; refit b; test a",
        "step 3: b is put back while a, which leads into it, has not been looked at");

    // What a look would show

    [Theory]
    [InlineData("clean")]
    [InlineData("flush")]
    public void Show_no_debris_at_a_part_that_was_cleaned(string treatment) => Check(
        "a", $"a inspect+{treatment}", $"remove a; {treatment} a; inspect a; refit a",
        "step 3: a is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone");

    [Fact]
    public void Show_no_debris_at_a_part_that_was_renewed() => Check(
        "a", "a inspect+replace", "remove a; replace a; inspect a; refit a",
        "step 3: a is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone");

    [Fact]
    public void Show_no_debris_where_a_flush_has_gone_through() => Check(
        "a[inplace] > b[inplace]", "a flush; b inspect+clean", "flush a; inspect b; clean b",
        "step 2: b is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone");

    [Fact]
    public void Show_wear_at_a_part_that_was_cleaned() => Check(
        "a", "a inspect+clean", "remove a; inspect a; clean a; measure a; refit a");

    [Fact]
    public void Do_not_clean_in_place_behind_a_dirty_part_that_is_only_coming_off() => Check(
        "a > b[inplace]", "a clean; b clean",
        "remove a at=0-20; clean b at=10-30 after= by=2; clean a at=20-40 after=1; refit a",
        "step 2: b is cleaned while a, which leads into it, is still dirty");

    // Flushing

    [Fact]
    public void Carry_on_what_is_flushed_out_into_a_fitted_clean_part() => Check(
        "a[inplace] > b", "a flush; b - cleared", "flush a",
        "step 1: b is dirtied again by what is flushed out of a",
        "when all is done: b is left dirty");

    [Fact]
    public void Carry_on_through_dirty_parts_to_a_clean_one() => Check(
        "a[inplace] > b[inplace] > c[inplace] > d", "a flush; b flush; c flush; d - cleared", "flush a; flush b blank=c; flush c blank=d",
        "step 1: d is dirtied again by what is flushed out of a",
        "when all is done: d is left dirty");

    [Fact]
    public void Stop_a_flush_at_a_blank() => Check(
        "a[inplace] > b > c", "a flush; b - cleared; c - cleared", "flush a blank=b; prove");

    [Fact]
    public void Stop_a_flush_where_a_part_is_off() => Check(
        "a[inplace] > b > c", "a flush; b - cleared; c - cleared", "remove b; flush a; refit b; prove");

    [Fact]
    public void Stop_a_flush_at_a_closed_joint() => Check("a[inplace] ~ b", "a flush; b - cleared", "flush a; prove");

    [Fact]
    public void Do_not_stop_a_flush_at_a_barrier() => Check(
        "a[inplace] > f[filter holds metal all abs] > b", "a flush; f replace; b - cleared", "flush a; remove f; replace f; refit f",
        "step 1: b is dirtied again by what is flushed out of a",
        "when all is done: b is left dirty");

    [Fact]
    public void Carry_nothing_out_of_a_part_that_is_off() => Check(
        "a > b", "a flush; b - cleared", "remove a; flush a; refit a; prove");

    [Fact]
    public void Carry_on_where_a_part_is_just_coming_off_or_going_on() => Check(
        "a[inplace] > b > c", "a flush; b - cleared; c - cleared",
        "remove b at=0-10; flush a at=5-20 after=; refit b at=20-30 after=1+2",
        "step 2: b is dirtied again by what is flushed out of a",
        "step 2: c is dirtied again by what is flushed out of a",
        "step 3: b is put back dirty",
        "when all is done: b is left dirty",
        "when all is done: c is left dirty");

    [Fact]
    public void Make_a_part_dirty_that_was_only_suspect_so_that_no_look_cures_it() => Check(
        "a[inplace] > b[inplace]", "a flush; b inspect", "flush a; inspect b",
        "step 2: b is looked at for debris after it was cleaned, flushed or renewed: what it had to show is gone",
        "when all is done: b is left dirty");

    [Fact]
    public void Carry_on_every_time_a_part_is_flushed() => Check(
        "a[inplace] > b[inplace]", "a flush; b inspect", "flush a blank=b; inspect b; flush a",
        "step 3: b is dirtied again by what is flushed out of a",
        "when all is done: b is left dirty");

    // What an earlier flush has passed must not hide what was cleaned since.
    [Fact]
    public void Carry_into_a_part_that_was_cleaned_since_the_last_flush() => Check(
        "a[inplace] > b > c; x[inplace] > b", "a flush; b clean; c clean; x - cleared",
        "flush a; remove b; remove c; clean b; clean c; refit b; refit c; flush x",
        "step 8: b is dirtied again by what is flushed out of x",
        "step 8: c is dirtied again by what is flushed out of x",
        "when all is done: b is left dirty",
        "when all is done: c is left dirty");

    [Fact]
    public void Take_a_self_loop_for_nothing() => Check(
        "a[inplace]; a > a; b; b > b", "a flush; b clean", "flush a; remove b; clean b; refit b; prove");

    // Loops

    [Fact]
    public void Clean_a_loop_that_is_flushed_as_one() => Check(
        "a[inplace] > b[inplace] > c[inplace] > a", "a flush; b flush+clean; c flush", "clean b; flush a+b+c; prove");

    [Fact]
    public void Do_not_clean_a_loop_part_by_part() => Check(
        "a[inplace] <> b[inplace]", "a clean; b clean", "clean a; clean b",
        "step 1: a is cleaned while b, which leads into it, is still dirty");

    [Fact]
    public void Do_not_flush_a_loop_of_which_a_part_is_cleaned_later() => Check(
        "a[inplace] <> b[inplace]", "a flush; b flush+clean", "flush a+b; clean b",
        "step 1: a is cleaned while b, which leads into it, is still dirty");

    [Fact]
    public void Do_not_flush_a_loop_through_a_part_that_is_off() => Check(
        "a[inplace] <> b[inplace]", "a flush; b flush", "remove b; flush a+b; refit b",
        "step 2: b is off, so that nothing can be flushed through it and the others in one go");

    // Seals

    [Fact]
    public void Do_not_put_back_a_part_on_its_old_seal() => Check(
        "a[seals=ring+ring+washer]", "a clean", "remove a; clean a; refit a seals=ring+washer",
        "step 3: a is put back without a new ring");

    [Fact]
    public void Do_not_close_a_part_in_place_on_its_old_seal() => Check(
        "a[inplace seals=ring]", "a flush+test", "flush a seals=ring; test a",
        "step 2: a is closed without a new ring");

    [Fact]
    public void Put_new_seals_where_a_part_in_place_is_closed() => Check(
        "a[inplace seals=ring]", "a flush+test", "flush a; test a seals=ring; prove");

    [Fact]
    public void Put_new_seals_into_every_part_of_a_loop() => Check(
        "a[inplace seals=ring] <> b[inplace seals=ring+cap]", "a flush; b flush", "flush a+b seals=cap+ring",
        "step 1: b is closed without a new ring");

    // The proving run

    [Fact]
    public void Do_not_try_the_engine_while_a_part_is_off() => Check(
        "a", "a clean", "remove a; clean a; prove; refit a",
        "step 3: the engine is tried while a is off");

    [Fact]
    public void Do_not_try_the_engine_while_a_part_is_dirty() => Check(
        "a[inplace] > b", "a clean", "prove; clean a",
        "step 1: the engine is tried while a is still dirty",
        "step 1: b is dirtied again by what the engine carries on",
        "when all is done: b is left dirty");

    [Fact]
    public void Do_not_try_the_engine_while_a_part_has_not_been_looked_at() => Check(
        "a[inplace]", "a inspect", "prove; inspect a",
        "step 1: the engine is tried while a has not been looked at");

    [Fact]
    public void May_change_a_filter_once_more_after_the_first_running_hours() => Check(
        "f[filter]", "f replace", "remove f; replace f; refit f; prove; replace f phase=prove; inspect f phase=prove");

    // Steps that are no steps

    [Fact]
    public void Name_only_parts_that_the_engine_has() => Check(
        "a[inplace]", "a flush", "flush a blank=b; test c; prove",
        "step 1: this engine has no part b",
        "step 2: this engine has no part c");

    [Fact]
    public void Wait_for_what_comes_before() => Check(
        "a", "", "safe after=2; note after=7; prove after=3",
        "step 1: it waits for step 2, which does not come before it",
        "step 2: it waits for step 7, which does not come before it",
        "step 3: it waits for step 3, which does not come before it");

    [Fact]
    public void Wait_until_it_is_finished() => Check(
        "a", "", "safe at=0-10; prove at=9-20",
        "step 2: it starts before step 1, which it waits for, is finished");

    [Theory]
    [InlineData(double.NaN, 5)]
    [InlineData(0, double.NaN)]
    [InlineData(0, double.PositiveInfinity)]
    [InlineData(-1, 5)]
    [InlineData(6, 5)]
    public void Have_times_that_can_be_kept(double start, double finish)
    {
        Family family = CaseReader.System("a");
        PlanDocument plan = BenchPlan.Of(family, "", "", "safe");

        Assert.Equal(
            ["step 1: it has no times that can be kept"],
            Faults(family, plan with { Steps = [plan.Steps[0] with { Start = start, Finish = finish }] }));
    }

    [Fact]
    public void Bear_each_number_once()
    {
        Family family = CaseReader.System("a");
        PlanDocument plan = BenchPlan.Of(family, "", "", "safe; prove");

        Assert.Equal(
            ["step 1: another step bears the same number"],
            Faults(family, plan with { Steps = [plan.Steps[0], plan.Steps[1] with { Number = 1, After = [] }] }));
    }

    // Several hands

    [Fact]
    public void Go_on_side_by_side() => Check(
        "a > b", "a clean; b clean",
        "remove a at=0-10; remove b at=0-15 by=2 after=; clean a at=10-20 after=1; clean b at=15-30 by=2 after=2; refit a at=20-30 after=3; refit b at=30-40 after=4+5; prove at=40-50");

    [Fact]
    public void Take_effect_when_they_finish() => Check(
        "a[inplace] > b", "a clean; b clean",
        "remove b at=0-10; clean b at=10-20; clean a at=10-40 by=2 after=; refit b at=30-50 after=2",
        "step 4: b is put back while a, which leads into it, is still dirty");

    [Fact]
    public void Finish_before_others_start_at_the_same_moment() => Check(
        "a[inplace] > b", "a clean; b clean",
        "remove b at=0-10; clean b at=10-20; clean a at=10-30 by=2 after=; refit b at=30-50 after=2+3; prove");

    [Fact]
    public void May_take_no_time_at_all() => Check(
        "a[inplace] > b", "a clean; b clean",
        "remove b at=0-0; clean b at=0-0; clean a at=0-0; refit b at=0-0; prove at=0-0");

    [Fact]
    public void Follow_their_numbers_where_they_take_no_time() => Check(
        "a[inplace] > b", "a clean; b clean",
        "remove b at=0-0; clean b at=0-0; refit b at=0-0; clean a at=0-0; prove at=0-0",
        "step 3: b is put back while a, which leads into it, is still dirty");

    private static void Check(string system, string parts, string steps, params string[] faults) => CheckFailed("", system, parts, steps, faults);

    private static void CheckFailed(string failed, string system, string parts, string steps, params string[] faults)
    {
        Family family = CaseReader.System(system);

        Assert.Equal(faults, Faults(family, BenchPlan.Of(family, failed, parts, steps)));
    }

    private static IEnumerable<string> Faults(Family family, PlanDocument plan) =>
        StepSimulator.Play(family, plan).Faults.Select(fault => fault.ToString());
}
