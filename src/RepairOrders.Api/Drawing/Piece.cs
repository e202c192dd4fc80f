namespace RepairOrders.Api.Drawing;

/// <summary>
/// One body of a repair, as all views draw it: lengths in mm along the pipe from the middle of the defect, heights in mm above
/// the outside of the pipe, angles in degrees clockwise from the defect.
/// </summary>
/// <param name="Part">The part of the bill it belongs to.</param>
/// <param name="Words">What it is, with its thickness; empty where another piece says it.</param>
/// <param name="Fill">How it is filled.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Inner">Height of its inner face.</param>
/// <param name="Outer">Height of its outer face.</param>
internal sealed record Piece(string Part, string Words, Fill Fill, double From, double To, double Inner, double Outer)
{
    /// <summary>Half the angle it takes; 180 all round.</summary>
    public double HalfAngle { get; init; } = 180;

    /// <summary>Where its middle is, degrees from the defect.</summary>
    public double At { get; init; }

    /// <summary>Length over which each end runs out to nothing.</summary>
    public double Taper { get; init; }

    /// <summary>Radius of its corners, seen square.</summary>
    public double Corner { get; init; }

    /// <summary>It cannot be seen from outside.</summary>
    public bool Covered { get; init; }

    /// <summary>A fillet: full height at one end only, on the side given by its sign.</summary>
    public int Fillet { get; init; }

    /// <summary>A band: off an arc plate it runs down to the pipe on a tangent.</summary>
    public double? RunsDownFrom { get; init; }
}

/// <summary>A fastener or bolt.</summary>
/// <param name="Part">The part of the bill.</param>
/// <param name="Kind">How it is drawn.</param>
/// <param name="At">Degrees clockwise from the defect.</param>
/// <param name="Along">Middle, along the pipe.</param>
/// <param name="Long">Size along the pipe.</param>
/// <param name="Round">Size round the pipe.</param>
/// <param name="Base">Height of its foot above the pipe.</param>
/// <param name="Height">How far it stands out.</param>
internal sealed record Fastener(
    string Part,
    FastenerKind Kind,
    double At,
    double Along,
    double Long,
    double Round,
    double Base,
    double Height
);

internal enum FastenerKind
{
    /// <summary>A band's screw or clip, lying on the band.</summary>
    Band,

    /// <summary>A pair of ears with a bolt through both.</summary>
    Ears,

    /// <summary>A rod along the pipe.</summary>
    Rod,
}

/// <summary>A length along the pipe with its text; row 0 is nearest to the repair.</summary>
internal sealed record AlongSize(double From, double To, string Text, int Row, bool Above);

/// <summary>An angle round the pipe with its text, degrees clockwise from the defect; and the length along it, if it is cut to one.</summary>
internal sealed record RoundSize(double From, double To, string Text, string? Arc = null);

/// <summary>All that a method puts on the pipe.</summary>
/// <param name="Pieces">Bodies, from the pipe outwards.</param>
/// <param name="Fasteners">Fasteners and bolts.</param>
/// <param name="Along">Lengths to dimension.</param>
/// <param name="Round">Angles to dimension.</param>
/// <param name="Notes">What stands beside the drawing.</param>
internal sealed record Fit(
    IReadOnlyList<Piece> Pieces,
    IReadOnlyList<Fastener> Fasteners,
    IReadOnlyList<AlongSize> Along,
    IReadOnlyList<RoundSize> Round,
    IReadOnlyList<string> Notes
)
{
    public static readonly Fit Nothing = new([], [], [], [], []);

    /// <summary>Bodies longer than this reach: half the length that must be shown.</summary>
    public double Reach => Pieces.Select(p => Math.Max(Math.Abs(p.From), Math.Abs(p.To))).DefaultIfEmpty(0).Max();

    public double Height =>
        Pieces.Select(p => p.Outer).Concat(Fasteners.Select(f => f.Base + f.Height)).DefaultIfEmpty(0).Max();

    /// <summary>The pipe itself is replaced.</summary>
    public bool Replaces { get; init; }
}
