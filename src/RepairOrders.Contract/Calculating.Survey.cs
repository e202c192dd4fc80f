using System.Net.Http.Headers;

namespace RepairOrders.Contract;

/// <summary>What is wrong with a row of a survey.</summary>
/// <param name="Field">The field or column.</param>
/// <param name="Value">Its value as it was read; nothing where there is none.</param>
/// <param name="Sentence">What is wrong and what is allowed.</param>
public sealed record SurveyProblem(string Field, string? Value, string Sentence);

/// <summary>The strength of one defect of a survey, or what is wrong with its row.</summary>
/// <param name="Row">Its row, from 1; a heading is not counted.</param>
/// <param name="Governs">The method that governs; nothing where no pressure is credited.</param>
/// <param name="SafePressureBar">Its safe pressure, gauge.</param>
/// <param name="EstimatedRepairFactor">Established pressure over safe pressure.</param>
/// <param name="OriginalBar">Failure pressure by original ASME B31G, gauge; nothing where refused.</param>
/// <param name="ModifiedBar">Failure pressure by modified ASME B31G, gauge; nothing where refused.</param>
/// <param name="EffectiveBar">Failure pressure by effective area, gauge; nothing where refused.</param>
/// <param name="CorrodedBar">Failure pressure by the corroded-pipe method, gauge; nothing where refused.</param>
/// <param name="ThinAreaBar">Pressure held by local thin area, gauge; nothing where refused.</param>
/// <param name="EffectiveLengthMm">Length of the weakest stretch; nothing without one.</param>
/// <param name="Problem">What is wrong with the row; nothing where it could be judged.</param>
public sealed record SurveyedDefect(
    int Row,
    string? Governs = null,
    double? SafePressureBar = null,
    double? EstimatedRepairFactor = null,
    double? OriginalBar = null,
    double? ModifiedBar = null,
    double? EffectiveBar = null,
    double? CorrodedBar = null,
    double? ThinAreaBar = null,
    double? EffectiveLengthMm = null,
    SurveyProblem? Problem = null
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Screens a survey of defects, streamed both ways.</summary>
    /// <param name="survey">One <see cref="CalculateRemainingStrength"/> a line, or CSV with a heading.</param>
    /// <param name="kind"><c>application/jsonl</c>, <c>application/x-ndjson</c> or <c>text/csv</c>.</param>
    /// <param name="stop">Cancels the screening.</param>
    /// <returns>One <see cref="SurveyedDefect"/> for each row, in the same form; the caller disposes of it.</returns>
    /// <exception cref="Refused">415 for another kind, 413 for a survey above 512 MB.</exception>
    public async Task<Stream> ScreenSurvey(Stream survey, string kind, CancellationToken stop = default)
    {
        using var content = new StreamContent(survey);
        content.Headers.ContentType = new MediaTypeHeaderValue(kind);
        var response = await Send(HttpMethod.Post, "calculations/remaining-strength/batch", content, null, null, stop)
            .ConfigureAwait(false);
        return await response.Content.ReadAsStreamAsync(stop).ConfigureAwait(false);
    }
}
