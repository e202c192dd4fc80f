namespace RepairOrders.Engineering.Methods;

/// <summary>The documents the methods lean on, named once.</summary>
internal static class Sources
{
    public static readonly Clause PuttyManual = new(
        "US Army TM 55-1915-200-SDC and 55-1905-223-SDC",
        "ch. 8, damage control"
    );

    public static readonly Clause PuttyCover = new("USCG NVIC 17-14", "task OICEW 8.2.A");

    public static readonly Clause PuttySubstrate = new("US Navy damage control training manual", "ch. 7");

    public static readonly Clause NavyPatches = new(
        "US Navy article on damage control pipe patches, citing NSTM 079 vol. 2",
        ""
    );

    public static readonly Clause OrderOfPreference = new("HSE Safety Notice 4/2005", "order of preference");

    public static readonly Clause LeakClamps = new("HSE, Leak sealing repair clamps", "");

    public static readonly Clause FireOfComposites = new("HSE RR1181, fire testing of composite repairs", "");

    public static readonly Clause LowRiskWrap = new("ASME PCC-2-2018", "Art. 401-1.2.2");

    public static readonly Clause Wrap = new("ISO 24817 and ASME PCC-2 Art. 401", "", Provenance.FromMemory);

    public static readonly Clause WeldedPatch = new("49 CFR 192", "717(b)(3)");

    public static readonly Clause NoWeldedPatch = new("49 CFR 192", "711(c)");

    public static readonly Clause HotWorkInService = new("49 CFR 192", "715(b)");

    public static readonly Clause ClampOnGas = new("49 CFR 192", "717(b)(2)");

    public static readonly Clause NewPipeTest = new("49 CFR 192", "719(a)");

    public static readonly Clause Sleeves = new("ASME PCC-2-2018", "Art. 206");

    public static readonly Clause Cracks = new("API 570", "8.1", Provenance.FromMemory);

    public static readonly Clause BrittlePipe = new(
        "ASME B31.3",
        "restrictions on brittle metals",
        Provenance.FromMemory
    );

    public static readonly Clause DepthCutOff = new("ASME B31G", "section 1: deeper than 80 %", Provenance.FromMemory);

    public static readonly Clause OutsideFormulae = new(
        "exclusions of ASME B31G and API 579-1",
        "",
        Provenance.FromMemory
    );

    public static readonly Clause SteamClass = new("class-society table of piping classes", "steam, class III");

    public static readonly Clause StraightPipeOnly = new("scope of the sizing: straight pipe", "", Provenance.OwnRule);

    public static readonly Clause Balance = new("force balance", "", Provenance.Derived);

    public static readonly Clause Ring = new("Bresse's ring formula, a third of it", "", Provenance.Derived);

    public static readonly Clause Geometry = new("geometry", "", Provenance.Derived);

    public static readonly Clause Own = new("rule of this library", "", Provenance.OwnRule);

    public static readonly Clause HoldPointsOfWraps = new("ISO 24817, installation", "", Provenance.FromMemory);

    public static readonly Clause HoldPointsOfClamps = new("API 570", "8.1.5", Provenance.FromMemory);

    /// <summary>A default that somebody designing may choose freely: no fact is assumed by it.</summary>
    public static readonly Clause Chosen = new("choice of design", "", Provenance.OwnRule);

    public static readonly Clause Pipe = new("the pipe as measured", "", Provenance.Entered);
}
