namespace RepairOrders.Engineering.Life;

// The chance of a standard normal above x, from W. J. Cody's rational approximations of erfc (Mathematics of Computation 23
// (1969) 631-637), relative error under 1e-14 down to the least probability; made reproducible by our own exponential.
internal static class NormalTail
{
    private static readonly double[] NearOver =
    [
        3.16112374387056560e00,
        1.13864154151050156e02,
        3.77485237685302021e02,
        3.20937758913846947e03,
        1.85777706184603153e-1,
    ];

    private static readonly double[] NearUnder =
    [
        2.36012909523441209e01,
        2.44024637934444173e02,
        1.28261652607737228e03,
        2.84423683343917062e03,
    ];

    private static readonly double[] MiddleOver =
    [
        5.64188496988670089e-1,
        8.88314979438837594e0,
        6.61191906371416295e01,
        2.98635138197400131e02,
        8.81952221241769090e02,
        1.71204761263407058e03,
        2.05107837782607147e03,
        1.23033935479799725e03,
        2.15311535474403846e-8,
    ];

    private static readonly double[] MiddleUnder =
    [
        1.57449261107098347e01,
        1.17693950891312499e02,
        5.37181101862009858e02,
        1.62138957456669019e03,
        3.29079923573345963e03,
        4.36261909014324716e03,
        3.43936767414372164e03,
        1.23033935480374942e03,
    ];

    private static readonly double[] FarOver =
    [
        3.05326634961232344e-1,
        3.60344899949804439e-1,
        1.25781726111229246e-1,
        1.60837851487422766e-2,
        6.58749161529837803e-4,
        1.63153871373020978e-2,
    ];

    private static readonly double[] FarUnder =
    [
        2.56852019228982242e00,
        1.87295284992346725e00,
        5.27905102951428412e-1,
        6.05183413124413191e-2,
        2.33520497626869185e-3,
    ];

    private const double InverseRootPi = 5.6418958354775628695e-1;

    public static double Above(double x) => x >= 0 ? Erfc(x / Math.Sqrt(2)) / 2 : 1 - Erfc(-x / Math.Sqrt(2)) / 2;

    private static double Erfc(double y)
    {
        if (y <= 0.46875)
        {
            return 1 - y * Ratio(NearOver, NearUnder, y * y);
        }
        if (y > 26.5)
        {
            return 0;
        }
        var inverse = 1 / (y * y);
        var scaled =
            y <= 4
                ? Ratio(MiddleOver, MiddleUnder, y)
                : (InverseRootPi - inverse * Ratio(FarOver, FarUnder, inverse)) / y;
        // e^(−y²) in two factors, so that the square loses no figures.
        var near = Math.Truncate(y * 16) / 16;
        return Reproducible.Exp(-near * near) * Reproducible.Exp(-(y - near) * (y + near)) * scaled;
    }

    private static double Ratio(double[] over, double[] under, double x)
    {
        var top = over[^1] * x;
        var bottom = x;
        for (var i = 0; i < under.Length - 1; i++)
        {
            top = (top + over[i]) * x;
            bottom = (bottom + under[i]) * x;
        }
        return (top + over[under.Length - 1]) / (bottom + under[^1]);
    }
}
