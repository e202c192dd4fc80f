using System.Net;
using System.Text.Json.Nodes;

namespace RepairOrders.Api.Tests.Calculations;

public sealed class CalculationRefusals(Workshop workshop)
{
    [Theory]
    [InlineData("wall-thickness", "pipe.wallThicknessMm", "-3")]
    [InlineData("wall-thickness", "pipe.outsideDiameterMm", "1e300")]
    [InlineData("wall-thickness", "duty.code", "\"b999\"")]
    [InlineData("wall-thickness", "pipe.metal", "7")]
    [InlineData("leak-rate", "insidePressureBar", "\"hot\"")]
    [InlineData("leak-rate", "holeDiameterMm", "0")]
    [InlineData("tightening", "screws", "0")]
    [InlineData("tightening", "preloadNeededKn", "-1")]
    [InlineData("surface-climate", "relativeHumidityPercent", "0")]
    [InlineData("cut-plan", "bands", "[]")]
    [InlineData("cut-plan", "timeLimitS", "600")]
    [InlineData("axial-load", "defect", "null")]
    [InlineData("outliving", "strength.pressureBar", "1e5")]
    public async Task A_wrong_value_is_refused_at_its_field(string subject, string path, string value)
    {
        var ask = Case.Of(subject);
        var steps = path.Split('.');
        steps[..^1].Aggregate((JsonNode)ask, (at, step) => at[step]!)[steps[^1]] = JsonNode.Parse(value);
        var heard = await (await workshop.Scene()).Calculate(subject, ask);
        heard.Status.ShouldBe(HttpStatusCode.BadRequest, heard.Text);
        heard.Fields.ShouldBe([path], heard.Text);
    }

    [Fact]
    public async Task A_field_nobody_knows_is_refused()
    {
        var ask = Case.Of("leak-rate");
        ask["insidePresureBar"] = 3;
        var heard = await (await workshop.Scene()).Calculate("leak-rate", ask);
        heard.Status.ShouldBe(HttpStatusCode.BadRequest);
        heard.Fields.ShouldBe(["insidePresureBar"]);
    }

    [Fact]
    public async Task An_input_no_method_knows_is_refused_by_name()
    {
        var ask = Case.Of("banded-patch");
        ask["inputs"] = new JsonObject { ["colour"] = 3 };
        var heard = await (await workshop.Scene()).Calculate("banded-patch", ask);
        heard.Status.ShouldBe(HttpStatusCode.BadRequest);
        heard.Text.ShouldContain("colour");
    }

    [Fact]
    public async Task Nobody_reckons_without_signing_in()
    {
        var scene = await workshop.Scene();
        using var http = workshop.Http(scene.Clock);
        using var body = new StringContent("{}", null, "application/json");
        (await http.PostAsync("api/v1/calculations/cure", body)).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
    }
}
