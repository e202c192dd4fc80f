using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>The plate between putty and bands: its blank, and its bending between and beyond the bands.</summary>
public static class PatchPlate
{
    /// <summary>Cover beyond the damage on every side.</summary>
    public static readonly Length Cover = Length.FromInches(2);

    /// <summary>Length of the blank along the pipe.</summary>
    /// <remarks>
    /// <para>Formula: L = d + 2 × 50.8 mm</para>
    /// <para>Symbols: d extent of the damage along the pipe, mm.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: two inches of cover on every side: USCG NVIC 17-14, task 8.2.A; US Army TM 55-1915-200-SDC, ch. 8.</para>
    /// </remarks>
    /// <param name="damage">Extent of the damage along the pipe d.</param>
    /// <returns>Length of the blank L.</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>12 mm of damage: 113.6 mm.</example>
    public static Length BlankLength(Length damage) =>
        Length.FromMillimeters(Require.NotNegative("axialLengthMm", damage.Millimeters)) + 2 * Cover;

    /// <summary>Length of the blank round the pipe, at mid-thickness, so that the cover is right on the pipe's surface.</summary>
    /// <remarks>
    /// <para>Formula: W = (d + 2 × 50.8 mm)(D/2 + tp + t/2)/(D/2)</para>
    /// <para>Symbols: d extent of the damage round the pipe, measured on it, mm; D outside diameter, mm; tp putty, t plate thickness, mm.</para>
    /// <para>Validity: W less than the circumference less the gap; beyond it a split full circle.</para>
    /// <para>Reference: cover as <see cref="BlankLength"/>; the radius ratio derived here.</para>
    /// </remarks>
    /// <param name="damage">Extent of the damage round the pipe d.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="putty">Putty thickness tp.</param>
    /// <param name="plate">Plate thickness t.</param>
    /// <returns>Length of the blank W.</returns>
    /// <exception cref="ImpossibleInputException">A diameter of 0 or a negative length.</exception>
    /// <example>12 mm on 114.3 mm with 3 mm putty and 1.5 mm plate: 121.05 mm.</example>
    public static Length BlankArc(Length damage, Length outsideDiameter, Length putty, Length plate)
    {
        var d = Require.NotNegative("circumferentialLengthMm", damage.Millimeters);
        var R = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters) / 2;
        var tp = Require.NotNegative("puttyThicknessMm", putty.Millimeters);
        var t = Require.NotNegative("plateThicknessMm", plate.Millimeters);
        return Length.FromMillimeters((d + 2 * Cover.Millimeters) * (R + tp + t / 2) / R);
    }

    /// <summary>Bending stress of the plate between bands taken as lines: an upper bound.</summary>
    /// <remarks>
    /// <para>Formula: σ = p s²/(2 t²)</para>
    /// <para>Symbols: p pressure that bends the plate, MPa; s pitch of the bands, mm; t plate thickness, mm.</para>
    /// <para>Validity: long row of bands; small deflection.</para>
    /// <para>Reference: strip clamped on both sides, σ = 6 (p s²/12)/t².</para>
    /// </remarks>
    /// <param name="pressure">Pressure p; (1 + m) P where the seal stress between bands is counted.</param>
    /// <param name="pitch">Pitch of the bands s.</param>
    /// <param name="plate">Plate thickness t.</param>
    /// <returns>Bending stress σ.</returns>
    /// <exception cref="ImpossibleInputException">A thickness of 0 or a negative value.</exception>
    /// <example>1 MPa, 30 mm, 1.5 mm: 200 MPa.</example>
    public static Pressure StressBetweenLines(Pressure pressure, Length pitch, Length plate)
    {
        var p = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var s = Require.NotNegative("bandPitchMm", pitch.Millimeters);
        var t = Require.Positive("plateThicknessMm", plate.Millimeters);
        return Pressure.FromMegapascals(p * s * s / (2 * t * t));
    }

    /// <summary>Bending stress of the plate between bands of finite width that press evenly.</summary>
    /// <remarks>
    /// <para>Formula: σ = p g max(2 g + w, g + 2 w)/(4 t²), g = s − w</para>
    /// <para>Symbols: p pressure that bends the plate, MPa; g clear gap, w band width, s pitch, mm; t plate thickness, mm.</para>
    /// <para>Validity: long row of bands; tends to the clamped strip as w tends to 0.</para>
    /// <para>Reference: continuous strip on even reactions, derived here and checked by quadrature.</para>
    /// </remarks>
    /// <param name="pressure">Pressure p.</param>
    /// <param name="width">Band width w.</param>
    /// <param name="gap">Clear gap g.</param>
    /// <param name="plate">Plate thickness t.</param>
    /// <returns>Bending stress σ.</returns>
    /// <exception cref="ImpossibleInputException">A thickness of 0 or a negative value.</exception>
    /// <example>1 MPa, 19 mm bands at 30 mm, 1.5 mm: 59.9 MPa.</example>
    public static Pressure StressBetweenBands(Pressure pressure, Length width, Length gap, Length plate)
    {
        var p = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var w = Require.NotNegative("bandWidthMm", width.Millimeters);
        var g = Require.NotNegative("bandGapMm", gap.Millimeters);
        var t = Require.Positive("plateThicknessMm", plate.Millimeters);
        return Pressure.FromMegapascals(p * g * Math.Max(2 * g + w, g + 2 * w) / (4 * t * t));
    }

    /// <summary>Bending stress of the plate's end beyond the last band.</summary>
    /// <remarks>
    /// <para>Formula: σ = 3 p c²/t²</para>
    /// <para>Symbols: p pressure that bends the plate, MPa; c overhang, mm; t plate thickness, mm.</para>
    /// <para>Validity: small deflection; c at most 0.41 of the pitch for the stress of a clamped strip.</para>
    /// <para>Reference: cantilever, σ = 6 (p c²/2)/t².</para>
    /// </remarks>
    /// <param name="pressure">Pressure p.</param>
    /// <param name="overhang">Overhang c.</param>
    /// <param name="plate">Plate thickness t.</param>
    /// <returns>Bending stress σ.</returns>
    /// <exception cref="ImpossibleInputException">A thickness of 0 or a negative value.</exception>
    /// <example>1 MPa, 12 mm, 1.5 mm: 192 MPa.</example>
    public static Pressure StressOfOverhang(Pressure pressure, Length overhang, Length plate)
    {
        var p = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var c = Require.NotNegative("overhangMm", overhang.Millimeters);
        var t = Require.Positive("plateThicknessMm", plate.Millimeters);
        return Pressure.FromMegapascals(3 * p * c * c / (t * t));
    }

    /// <summary>Putty to fill the hole and lie under the plate, waste included.</summary>
    /// <remarks>
    /// <para>Formula: V = (π/4 d² tw + L W t)(1 + q)</para>
    /// <para>Symbols: d hole, mm; tw wall, mm; L, W plate along and round the pipe, mm; t layer, mm; q waste, -.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: geometry, derived here.</para>
    /// </remarks>
    /// <param name="hole">Hole diameter d; 0 where it is not through.</param>
    /// <param name="wall">Wall tw.</param>
    /// <param name="length">Plate along the pipe L.</param>
    /// <param name="arc">Plate round the pipe W.</param>
    /// <param name="layer">Layer as applied t.</param>
    /// <param name="waste">Waste q [-].</param>
    /// <returns>Volume V.</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>12 mm hole in 6.02 mm wall, 113.6 × 113.6 × 3 mm, 15 %: 45.3 cm³.</example>
    public static Volume PuttyVolume(Length hole, Length wall, Length length, Length arc, Length layer, double waste)
    {
        var d = Require.NotNegative("holeDiameterMm", hole.Millimeters);
        var tw = Require.NotNegative("wallThicknessMm", wall.Millimeters);
        var L = Require.NotNegative("plateLengthMm", length.Millimeters);
        var W = Require.NotNegative("plateArcMm", arc.Millimeters);
        var t = Require.NotNegative("puttyThicknessMm", layer.Millimeters);
        var q = Require.Between("puttyWaste", waste, 0, 5);
        return Volume.FromCubicMillimeters((Math.PI / 4 * d * d * tw + L * W * t) * (1 + q));
    }

    /// <summary>Whole sticks of putty: part sticks are never mixed by eye.</summary>
    /// <param name="needed">Mass needed.</param>
    /// <param name="stick">Mass of a stick.</param>
    /// <returns>Sticks, rounded up. 86 g from 114 g sticks: 1.</returns>
    /// <exception cref="ImpossibleInputException">A stick of no mass.</exception>
    public static int Sticks(Mass needed, Mass stick)
    {
        var m = Require.NotNegative("puttyMassG", needed.Grams);
        var each = Require.Positive("stickMassG", stick.Grams);
        return (int)Math.Clamp(Math.Ceiling(Math.Round(m / each, 9)), 1, 1_000_000);
    }
}
