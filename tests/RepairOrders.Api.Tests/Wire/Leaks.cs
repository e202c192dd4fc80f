using System.Net;
using System.Net.Http.Headers;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace RepairOrders.Api.Tests.Wire;

public sealed class Leaks(Workshop workshop)
{
    [Fact]
    public async Task A_fault_of_ours_tells_nothing_but_its_trace_id()
    {
        var scene = await workshop.Scene();
        await using var api = OwnStore.Host(
            workshop.Address,
            services => services.Replace(ServiceDescriptor.Singleton<TimeProvider>(new BrokenClock()))
        );
        using var http = api.CreateClient();
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", scene.Mara.Token);
        using var answer = await http.GetAsync("/api/v1/orders");
        answer.StatusCode.ShouldBe(HttpStatusCode.InternalServerError);
        var text = await answer.Content.ReadAsStringAsync();
        text.ShouldContain("traceId");
        text.ShouldContain("Something went wrong on our side");
        foreach (var inner in new[] { "spring", "Exception", " at ", "RepairOrders.Api", "BrokenClock" })
            text.ShouldNotContain(inner, Case.Sensitive);
    }

    [Fact]
    public async Task A_store_that_is_away_is_503_with_a_time_to_come_back()
    {
        await using var api = OwnStore.Host("Host=127.0.0.1;Port=1;Username=x;Password=hush;Database=x;Timeout=2");
        using var http = api.CreateClient();
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", new string('a', 64));
        using var answer = await http.GetAsync("/api/v1/orders");
        answer.StatusCode.ShouldBe(HttpStatusCode.ServiceUnavailable);
        answer.Headers.RetryAfter!.Delta.ShouldBe(TimeSpan.FromSeconds(5));
        var text = await answer.Content.ReadAsStringAsync();
        text.ShouldContain("store-away");
        foreach (var inner in new[] { "127.0.0.1", "hush", "Npgsql", "Exception" })
            text.ShouldNotContain(inner);
        using var live = await http.GetAsync("/health/live");
        live.StatusCode.ShouldBe(HttpStatusCode.OK);
        using var ready = await http.GetAsync("/health/ready");
        ready.StatusCode.ShouldBe(HttpStatusCode.ServiceUnavailable);
    }

    [Fact]
    public async Task Answers_are_neither_kept_nor_sniffed_and_do_not_name_the_server()
    {
        var scene = await workshop.Scene();
        using var http = workshop.Http(scene.Clock);
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", scene.Mara.Token);
        using var answer = await http.GetAsync("/api/v1/orders");
        answer.Headers.CacheControl!.NoStore.ShouldBeTrue();
        answer.Headers.GetValues("X-Content-Type-Options").ShouldBe(["nosniff"]);
        answer.Headers.Contains("Server").ShouldBeFalse();
    }

    [Fact]
    public async Task Neither_passwords_nor_tokens_nor_codes_lie_in_the_store_as_they_are()
    {
        var scene = await workshop.Scene();
        var vera = await People.SignedIn.SignIn(scene, "vera");
        await vera.SetShortCode(new Contract.SetShortCode(People.SignedIn.Password, "730519"));
        await workshop.InStore(async store =>
        {
            var kept = System.Text.Json.JsonSerializer.Serialize(
                new object[]
                {
                    store.Users.Where(p => p.Id == scene.IdOf("vera")).ToList(),
                    store.Changes.Where(c => c.SubjectId == scene.IdOf("vera")).ToList(),
                    store
                        .KeptAnswers.Where(a => a.PersonId == scene.IdOf("vera") || a.PersonId == scene.IdOf("ada"))
                        .ToList(),
                    store.Sessions.Where(s => s.PersonId == scene.IdOf("vera")).Select(s => s.TokenHash).ToList(),
                }
            );
            foreach (var secret in new[] { People.SignedIn.Password, "one time and no more", "730519", vera.Token! })
                kept.ShouldNotContain(secret);
            await Task.CompletedTask;
        });
    }

    private sealed class BrokenClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => throw new ArithmeticException("the spring is broken");
    }
}
