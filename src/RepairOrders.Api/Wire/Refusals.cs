using System.Diagnostics;
using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics;
using Npgsql;
using RepairOrders.Api.Orders;
using RepairOrders.Engineering;

namespace RepairOrders.Api.Wire;

/// <summary>There is none, or the caller may not see it: the two read alike, so that nothing leaks.</summary>
internal sealed class NotHere(string what) : Exception(what);

/// <summary>A refusal that is neither the procedure's nor a malformed ask.</summary>
internal sealed class RequestRefusal(int status, string code, string sentence) : Exception(sentence)
{
    public int Status => status;
    public string Code => code;
}

/// <summary>An ask whose fields are wrong.</summary>
internal sealed class MalformedAsk(IReadOnlyDictionary<string, string[]> fields)
    : Exception(fields.First().Key + " " + fields.First().Value[0])
{
    public MalformedAsk(string field, string message)
        : this(new Dictionary<string, string[]> { [field] = [message] }) { }

    public IReadOnlyDictionary<string, string[]> Fields => fields;

    /// <summary>Throws if there are problems, with all of them.</summary>
    public static void If(IEnumerable<(string Field, string Sentence)> problems)
    {
        var fields = problems.GroupBy(p => p.Field, p => p.Sentence).ToDictionary(g => g.Key, g => g.ToArray());
        if (fields.Count > 0)
            throw new MalformedAsk(fields);
    }
}

/// <summary>Refusals ride on exceptions, so that a decision reads in one line and cannot be ignored; here they become answers.</summary>
internal sealed class Refusals : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext context, Exception exception, CancellationToken stop)
    {
        if (!context.Request.Path.StartsWithSegments("/api"))
            return false;
        var answer = exception is BadHttpRequestException { InnerException: JsonException fault }
            ? Malformed(await JsonFault.Read(fault, context.Request))
            : Answer(exception);
        if (answer is null)
            return false;
        await answer.ExecuteAsync(context);
        return true;
    }

    public static IResult? Answer(Exception exception) =>
        exception switch
        {
            ProcedureRefusal no => Problem(409, no.Objection.Code, no.Objection.Sentence, no.Objection.Clears),
            NotHere none => Problem(404, "not-here", none.Message),
            RequestRefusal no => Problem(no.Status, no.Code, no.Message),
            MalformedAsk bad => Malformed(bad.Fields),
            ImpossibleInputException bad => Malformed(
                new Dictionary<string, string[]>
                {
                    [bad.Field] = [$"{bad.Field} is {bad.Value}; allowed is {bad.Allowed}."],
                }
            ),
            BadHttpRequestException { StatusCode: 400 } bad => Malformed(BindingFault.Read(bad)),
            BadHttpRequestException bad => Problem(bad.StatusCode, $"http-{bad.StatusCode}", BindingFault.Words(bad)),
            DbUpdateConcurrencyException => Problem(
                412,
                "stale",
                "Somebody changed this since you opened it. What you typed is still yours: read it again and send it once more."
            ),
            // Characters the store cannot keep, which no check before has found.
            PostgresException { SqlState: "22021" or "22P05" }
            or DbUpdateException { InnerException: PostgresException { SqlState: "22021" or "22P05" } } => Malformed(
                new Dictionary<string, string[]> { ["body"] = ["The ask holds a character that cannot be kept."] }
            ),
            NpgsqlException { IsTransient: true }
            or DbUpdateException { InnerException: NpgsqlException { IsTransient: true } } => new Away(),
            InvalidOperationException { InnerException: NpgsqlException { IsTransient: true } } => new Away(),
            _ => null,
        };

    public static IResult Problem(int status, string code, string sentence, string? clears = null)
    {
        var more = new Dictionary<string, object?> { ["code"] = code, ["traceId"] = TraceId };
        if (clears is not null)
            more["clears"] = clears;
        return TypedResults.Problem(sentence, statusCode: status, extensions: more);
    }

    private static Microsoft.AspNetCore.Http.HttpResults.ProblemHttpResult Malformed(
        IReadOnlyDictionary<string, string[]> fields
    ) =>
        TypedResults.Problem(
            string.Join(" ", fields.SelectMany(f => f.Value)),
            statusCode: 400,
            extensions: new Dictionary<string, object?>
            {
                ["code"] = "malformed",
                ["errors"] = fields,
                ["traceId"] = TraceId,
            }
        );

    /// <summary>The framework's own problems in our words: fields as the wire spells them, and a code.</summary>
    public static void InOurWords(ProblemDetailsContext context)
    {
        var problem = context.ProblemDetails;
        problem.Extensions.TryAdd("code", problem.Status == 400 ? "malformed" : $"http-{problem.Status}");
        if (TraceId is { } id)
            problem.Extensions["traceId"] = id;
        problem.Detail ??= problem.Status switch
        {
            404 => "There is no such address.",
            405 => "This address does not take that method.",
            415 => "The body is of a kind that is not taken here.",
            >= 500 =>
                "Something went wrong on our side; what you sent was not saved. Give the trace id to whoever runs the service.",
            _ => null,
        };
        if (problem is not HttpValidationProblemDetails validation)
            return;
        var fields = validation.Errors.ToDictionary(
            e => FieldWords.Wired(e.Key),
            e => e.Value.Select(m => FieldWords.Of(FieldWords.Wired(e.Key), m)).ToArray()
        );
        validation.Errors.Clear();
        foreach (var (field, messages) in fields)
            validation.Errors[field] = messages;
        validation.Detail = string.Join(" ", fields.SelectMany(f => f.Value));
    }

    private static string? TraceId => Activity.Current?.TraceId.ToString();

    private sealed class Away : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.Headers.RetryAfter = "5";
            return Problem(503, "store-away", "The store is away at the moment. Nothing was saved; try again shortly.")
                .ExecuteAsync(httpContext);
        }
    }
}
