using UnitsNet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>Resin and cloth of a patch laid up by hand, by the rules of a published damage-control manual.</summary>
public static class HandLayUp
{
    /// <summary>Resin for an area of cloth.</summary>
    /// <remarks>
    /// <para>Formula: R = 2 A</para>
    /// <para>Symbols: R resin, g; A cloth, in².</para>
    /// <para>Validity: the manual's own cloth; it issues 500 g for 240 in², 4 % more than the rule.</para>
    /// <para>Reference: US Army TM 55-1905-223-SDC, 8-18 and 8-24.</para>
    /// </remarks>
    /// <param name="cloth">Cloth A.</param>
    /// <returns>Resin R.</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>240 in²: 480 g.</example>
    public static Mass Resin(Area cloth) => Mass.FromGrams(2 * Require.NotNegative("clothAreaIn2", cloth.SquareInches));

    /// <summary>Cloth for a bandage.</summary>
    /// <remarks>
    /// <para>Formula: L = 4 C</para>
    /// <para>Symbols: L cloth, C girth of the pipe, in one unit.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: US Army TM 55-1905-223-SDC, 8-18 and 8-24.</para>
    /// </remarks>
    /// <param name="girth">Girth C.</param>
    /// <returns>Cloth L.</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>14.14 in: 56.55 in.</example>
    public static Length Cloth(Length girth) => Length.FromMeters(4 * Require.NotNegative("girthM", girth.Meters));

    /// <summary>Ratio of resin to hardener by mass.</summary>
    /// <remarks>
    /// <para>Formula: r = a/b</para>
    /// <para>Symbols: a resin, b hardener, g.</para>
    /// <para>Validity: use only the ratio of the material in hand.</para>
    /// <para>Reference: 4 to 1 in US Army TM 55-1905-223-SDC and in a US Navy kit list.</para>
    /// </remarks>
    /// <param name="resin">Resin a.</param>
    /// <param name="hardener">Hardener b.</param>
    /// <returns>Ratio r [-].</returns>
    /// <exception cref="ImpossibleInputException">No hardener, or a negative mass.</exception>
    /// <example>300 g and 75 g: 4.</example>
    public static double Ratio(Mass resin, Mass hardener) =>
        Require.NotNegative("resinG", resin.Grams) / Require.Positive("hardenerG", hardener.Grams);
}
