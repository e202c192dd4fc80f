using System.Numerics;

namespace RepairOrders.Engineering.Life;

// Counts, day by day, the samples that fall short. Counts are whole numbers, so the order of the work does not matter.
internal sealed class OutlivingSampler(int horizonDays)
{
    public readonly int[] Wall = new int[horizonDays + 2];
    public readonly int[] Strength = new int[horizonDays + 2];
    public readonly int[] Either = new int[horizonDays + 2];

    private const int DrawsPerSample = 4;

    public void Run(in OutlivingModel model, ulong seed, int samples)
    {
        var lanes = Vector<double>.Count;
        var state = NormalDraws.States(seed, 0, DrawsPerSample);
        var draw = NormalDraws.Ahead(1);
        for (var first = 0; first < samples; first += lanes)
        {
            var (z1, z2) = NormalDraws.Pair(NormalDraws.Bits(state), NormalDraws.Bits(state + draw));
            var (z3, z4) = NormalDraws.Pair(
                NormalDraws.Bits(state + draw + draw),
                NormalDraws.Bits(state + draw + draw + draw)
            );
            var (wall, strength) = model.Years(z1, z2, z3, z4);
            Count(Day(wall), Day(strength), Math.Min(lanes, samples - first));
            state += NormalDraws.Ahead((ulong)lanes * DrawsPerSample);
        }
    }

    // Falls short in the course of a day counts by that day's end; short from the start counts on day 0.
    private Vector<double> Day(Vector<double> years) =>
        Vector.Min(
            Vector.Max(Vector.Ceiling(years * CorrosionRate.DaysPerYear), Vector<double>.Zero),
            new Vector<double>(horizonDays + 1)
        );

    private void Count(Vector<double> wall, Vector<double> strength, int lanes)
    {
        for (var lane = 0; lane < lanes; lane++)
        {
            var w = (int)wall[lane];
            var s = (int)strength[lane];
            Wall[w]++;
            Strength[s]++;
            Either[Math.Min(w, s)]++;
        }
    }
}
