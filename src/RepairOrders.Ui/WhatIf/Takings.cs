using RepairOrders.Contract;

namespace RepairOrders.Ui.WhatIf;

/// <summary>
/// The values of a calculation as the draft of an order's form: there they wait under "what you typed here before is kept", and a
/// person puts them in, completes and signs them. Nothing is written to the order by taking them.
/// </summary>
internal static class Takings
{
    public static string ActionOf(Carries carries) => carries == Carries.Sizing ? "size-repair" : "record-assessment";

    /// <summary>Stages in which the form is open.</summary>
    public static IReadOnlyList<Stage> Stages(Carries carries) =>
        carries == Carries.Sizing
            ? [Stage.Chosen, Stage.Sized]
            : [Stage.Requested, Stage.Assessed, Stage.Chosen, Stage.Sized, Stage.MadeSafe];

    public static Dictionary<string, string> Of(Inquiry inquiry, string today)
    {
        var draft = new Dictionary<string, string>();
        void Put(string to, string from)
        {
            if (inquiry.Draft[from] is { Length: > 0 } typed)
                draft[to] = typed;
        }
        if (inquiry.Subject.Carries == Carries.Sizing)
        {
            foreach (var input in inquiry.Inputs)
                Put($"values.{input.Code}", $"inputs.{input.Code}");
            return draft;
        }
        foreach (var (to, from) in Defect)
            Put("defect." + to, "defect." + from);
        switch (inquiry.Subject.Code)
        {
            case "remaining-strength":
                Put("defect.axialLength", "axialLengthMm");
                Put("defect.circumferentialLength", "circumferentialLengthMm");
                Put("defect.side", "side");
                Read(0, "beside", "referenceWallMm");
                break;
            case "wall-loss-grid":
                Put("survey.readings", "csv");
                Put("survey.unit", "unit");
                Put("survey.rows", "rows");
                Put("survey.axialSpacing", "axialSpacingMm");
                Put("survey.circumferentialSpacing", "circumferentialSpacingMm");
                Put("defect.side", "side");
                draft["survey.on"] = today;
                Read(0, "beside", "referenceWallMm");
                break;
            case "remaining-life":
                Walls();
                break;
            default:
                Read(0, "atDefect", "defect.remainingWallMm");
                Read(1, "beside", "defect.soundWallBesideMm");
                break;
        }
        return draft;

        void Read(int row, string where, string from)
        {
            Put($"readings[{row}].wall", from);
            if (draft.ContainsKey($"readings[{row}].wall"))
                (draft[$"readings[{row}].where"], draft[$"readings[{row}].on"]) = (where, today);
        }

        // The last day's walls are those of now, the others come before them.
        void Walls()
        {
            var rows = Enumerable.Range(0, inquiry.Draft.Rows("readings")).ToList();
            var last = rows.Select(r => inquiry.Draft[$"readings[{r}].on"]).Max(StringComparer.Ordinal);
            foreach (
                var group in rows.GroupBy(r =>
                    inquiry.Draft[$"readings[{r}].on"] == last ? "readings" : "earlierReadings"
                )
            )
            foreach (var (row, i) in group.Select((row, i) => (row, i)))
            {
                draft[$"{group.Key}[{i}].where"] = "atDefect";
                Put($"{group.Key}[{i}].wall", $"readings[{row}].wallMm");
                Put($"{group.Key}[{i}].on", $"readings[{row}].on");
                Put($"{group.Key}[{i}].spot", $"readings[{row}].place");
                Put($"{group.Key}[{i}].instrument", $"readings[{row}].instrument");
            }
        }
    }

    private static readonly (string To, string From)[] Defect =
    [
        ("kind", "kind"),
        ("side", "side"),
        ("cause", "cause"),
        ("throughWall", "throughWall"),
        ("axialLength", "axialLengthMm"),
        ("circumferentialLength", "circumferentialLengthMm"),
        ("holeDiameter", "holeDiameterMm"),
        ("clockHours", "clockHours"),
        ("growing", "growing"),
    ];
}
