using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>
/// How much may still be written out: joints, limits, seals and parts in the way, which a few short lines with large counts could make by the million.
/// </summary>
internal sealed class Allowance(ReadLimits limits, ProblemList problems)
{
    private int left = limits.Joints;

    /// <summary>Takes some off; answers whether there was enough. The first time there is not, a problem is raised.</summary>
    /// <param name="number">How many, at least 0.</param>
    /// <param name="place">Where they are written.</param>
    public bool Take(int number, SourceSpan place)
    {
        if (left >= number)
        {
            left -= number;
            return true;
        }

        if (left >= 0)
            problems.Add(FamilyProblems.TooManyJoints(place, limits.Joints));
        left = -1;
        return false;
    }
}
