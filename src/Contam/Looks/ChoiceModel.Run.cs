using System.Numerics;

namespace Contam.Looks;

internal sealed partial class ChoiceModel
{
    /// <summary>One choice gone through, look by look.</summary>
    private sealed class Run
    {
        private readonly ChoiceModel model;
        private readonly List<(ulong Mask, double Minutes)> hanging = [];
        private readonly List<(ulong Units, double Minutes, ulong OffWith)> off = [];
        private readonly int[] order;
        private readonly ulong[] due;
        private readonly double always;
        private int histories;

        public Run(ChoiceModel model, ulong chosen)
        {
            this.model = model;
            always = model.always;
            ulong[][] through = model.Through(chosen);
            ulong[] masks = model.Hanging(through, chosen);
            for (int i = 0; i < masks.Length; i++)
            {
                double minutes = i < model.groups.Length ? model.groups[i].Minutes : model.needTwo[i - model.groups.Length].Minutes;
                if (masks[i] == Source)
                    always += minutes;
                else if (masks[i] != 0)
                    AddHanging(masks[i], minutes);
            }

            foreach (InTheWay one in model.inTheWay)
            {
                if ((one.Units & chosen) != 0 && model.Joined(through, chosen, one.OffWith) is var offWith && offWith != Source)
                    off.Add((one.Units & chosen, one.Minutes, offWith));
            }

            ulong made = 0;
            for (int i = model.groups.Length; i < masks.Length; i++)
                made |= masks[i] & ~Source;

            var hangsOn = new ulong[model.Units.Length];
            for (int unit = 0; unit < hangsOn.Length; unit++)
            {
                for (int flow = 0; flow < through.Length; flow++)
                    hangsOn[unit] |= model.flows[flow].IsOfAnySize ? through[flow][unit] : 0;
                if ((hangsOn[unit] & Source) != 0 || (made >> unit & 1) == 1)
                    hangsOn[unit] = Source;
            }

            order = InOrder(chosen, hangsOn);
            due = [.. order.Select((_, place) => Earlier(place, hangsOn))];
        }

        /// <summary>The minutes to be expected; <c>null</c> for too many histories.</summary>
        public double? Sum() => GoOn(0, 0, 0, 1 - model.staysPut) is var sum && histories <= Histories.Most ? sum + (model.staysPut * Minutes(MadeAnyway(), 0)) : null;

        private ulong MadeAnyway()
        {
            ulong made = 0;
            for (int place = 0; place < order.Length; place++)
                made |= due[place] == Source ? 1UL << order[place] : 0;
            return made;
        }

        private double GoOn(int place, ulong made, ulong found, double likelihood)
        {
            if (histories > Histories.Most)
                return 0;
            if (place == order.Length)
            {
                histories++;
                return likelihood * Minutes(made, found);
            }

            if (due[place] != Source && (due[place] & found) == 0)
                return GoOn(place + 1, made, found, likelihood);
            int unit = order[place];
            double odds = due[place] == Source ? model.fromSource[unit] : 0;
            for (ulong left = found; left != 0; left &= left - 1)
                odds = Math.Max(odds, model.fromUnit[BitOperations.TrailingZeroCount(left), unit]);
            ulong bit = 1UL << unit;
            return GoOn(place + 1, made | bit, found, likelihood * (1 - odds)) + GoOn(place + 1, made | bit, found | bit, likelihood * odds);
        }

        private double Minutes(ulong made, ulong found)
        {
            double minutes = always;
            foreach ((ulong mask, double takes) in hanging)
            {
                if ((mask & found) != 0)
                    minutes += takes;
            }

            for (ulong left = made; left != 0; left &= left - 1)
                minutes += model.lookMinutes[BitOperations.TrailingZeroCount(left)];
            foreach ((ulong units, double takes, ulong offWith) in off)
            {
                if ((units & made) != 0 && (offWith & found) == 0)
                    minutes += takes;
            }

            return minutes;
        }

        private void AddHanging(ulong mask, double minutes)
        {
            for (int i = 0; i < hanging.Count; i++)
            {
                if (hanging[i].Mask != mask)
                    continue;
                hanging[i] = (mask, hanging[i].Minutes + minutes);
                return;
            }

            hanging.Add((mask, minutes));
        }

        private int[] InOrder(ulong chosen, ulong[] hangsOn)
        {
            var ordered = new List<int>();
            int[] waiting = [.. model.inRank.Where(unit => (chosen >> unit & 1) == 1)];
            ulong placed = 0;
            while (ordered.Count < waiting.Length)
            {
                int next = -1;
                foreach (int unit in waiting)
                {
                    ulong bit = 1UL << unit;
                    if ((placed & bit) == 0 && (hangsOn[unit] & ~Source & ~bit & ~placed) == 0)
                    {
                        next = unit;
                        break;
                    }
                }

                if (next < 0)
                    next = waiting.First(unit => (placed >> unit & 1) == 0);
                placed |= 1UL << next;
                ordered.Add(next);
            }

            return [.. ordered];
        }

        /// <summary>The looks made before this one by which it is due; see <see cref="Dueness"/>.</summary>
        private ulong Earlier(int place, ulong[] hangsOn)
        {
            ulong earlier = 0;
            for (int i = 0; i < place; i++)
                earlier |= 1UL << order[i];
            ulong dueBy = 0, seen = 1UL << order[place], open = seen;
            while (open != 0)
            {
                ulong now = hangsOn[BitOperations.TrailingZeroCount(open)];
                open &= open - 1;
                if (now == Source)
                    return Source;
                dueBy |= now & earlier;
                open |= now & ~earlier & ~seen;
                seen |= now & ~earlier;
            }

            return dueBy;
        }
    }
}
