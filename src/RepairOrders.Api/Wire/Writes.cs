using System.Security.Cryptography;
using System.Text.Json;
using Npgsql;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Wire;

/// <summary>The first answer to a keyed write, kept in the write's own transaction: a repeat gets it again and nothing is done twice.</summary>
internal sealed class KeptAnswer
{
    public Guid PersonId { get; init; }
    public string Key { get; init; } = "";
    public string Ask { get; init; } = "";
    public string BodyHash { get; init; } = "";
    public int Status { get; init; }
    public string Body { get; init; } = "";
    public string? ETag { get; init; }
    public string? Location { get; init; }
    public DateTimeOffset At { get; init; }
}

/// <summary>
/// Every write runs here: one transaction, one idempotency key, bounded retries. A handler loads, asks its rule and saves; when
/// somebody else signed meanwhile a <c>POST</c> does so again, and a <c>PUT</c> or <c>DELETE</c> answers 412.
/// </summary>
internal sealed class Writes : IEndpointFilter
{
    private const int Tries = 8;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        Plausible.Check(context.Arguments);
        if (HttpMethods.IsGet(http.Request.Method) || http.Items[typeof(Person)] is not Person person)
            return await next(context);
        var store =
            http.RequestServices.GetService(typeof(RepairStore)) as RepairStore
            ?? throw new InvalidOperationException();
        var key = http.Request.Headers["Idempotency-Key"].ToString();
        var secret = http.GetEndpoint()?.Metadata.GetMetadata<NoAnswerKept>() is not null;
        if (!secret && key.Length is 0 or > 100)
            throw new RequestRefusal(
                400,
                "idempotency-key-missing",
                "Idempotency-Key is missing or longer than 100 characters; every write carries one, so that a repeat is not done twice."
            );
        var ask = $"{http.Request.Method} {http.Request.Path}{http.Request.QueryString}";
        var hash = await BodyHash(http.Request);
        for (var attempt = 1; ; attempt++)
        {
            store.ChangeTracker.Clear();
            try
            {
                await using var transaction = await store.Database.BeginTransactionAsync(CancellationToken.None);
                var earlier = secret
                    ? null
                    : await store
                        .KeptAnswers.AsNoTracking()
                        .SingleOrDefaultAsync(a => a.PersonId == person.Id && a.Key == key, CancellationToken.None);
                if (earlier is not null)
                    return Again(earlier, ask, hash);
                var result = await next(context);
                if (secret)
                {
                    await transaction.CommitAsync(CancellationToken.None);
                    return result;
                }
                var answer = Keep(result, store, person, key, ask, hash, http);
                if (answer is null)
                    return result;
                store.KeptAnswers.Add(answer);
                await store.SaveChangesAsync(CancellationToken.None);
                await transaction.CommitAsync(CancellationToken.None);
                return new Kept(answer);
            }
            catch (Exception lost) when (attempt < Tries && MayTryAgain(lost, http.Request.Method))
            {
                await Task.Delay(Random.Shared.Next(5, 25 * attempt), CancellationToken.None);
            }
        }
    }

    private static Kept Again(KeptAnswer earlier, string ask, string hash) =>
        earlier.Ask == ask && earlier.BodyHash == hash
            ? new Kept(earlier)
            : throw new RequestRefusal(
                422,
                "key-reused",
                "This Idempotency-Key was used for a different write. Use a new key for a new write."
            );

    private static KeptAnswer? Keep(
        object? result,
        RepairStore store,
        Person person,
        string key,
        string ask,
        string hash,
        HttpContext http
    )
    {
        while (result is INestedHttpResult nested)
            result = nested.Result;
        var status = (result as IStatusCodeHttpResult)?.StatusCode ?? 200;
        if (status >= 400)
            return null;
        var value =
            result is IValueHttpResult withValue ? withValue.Value
            : result is IResult ? null
            : result;
        return new KeptAnswer
        {
            PersonId = person.Id,
            Key = key,
            Ask = ask,
            BodyHash = hash,
            Status = status,
            Body = value is null ? "" : JsonSerializer.Serialize(value, value.GetType(), RepairOrdersClient.Json),
            ETag =
                http.Response.Headers.ETag.ToString() is { Length: > 0 } tag ? tag
                : store.WrittenVersion is { } version ? $"\"{version}\""
                : null,
            Location = http.Response.Headers.Location.ToString() is { Length: > 0 } location ? location : null,
            At = (http.RequestServices.GetService(typeof(TimeProvider)) as TimeProvider ?? TimeProvider.System).Now(),
        };
    }

    private static bool MayTryAgain(Exception lost, string method) =>
        lost switch
        {
            DbUpdateConcurrencyException => HttpMethods.IsPost(method),
            // Two calls with one key at once: the second finds the first one's answer.
            DbUpdateException
            {
                InnerException: PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } clash
            } => clash.TableName == "kept_answers",
            DbUpdateException { InnerException: PostgresException state } => Passing(state),
            PostgresException state => Passing(state),
            NpgsqlException { IsTransient: true } => true,
            DbUpdateException { InnerException: NpgsqlException { IsTransient: true } } => true,
            _ => false,
        };

    // Serialisation failure, deadlock, read-only (a switchover under way), the server going down.
    private static bool Passing(PostgresException state) =>
        state.SqlState is "40001" or "40P01" or "25006" || state.SqlState.StartsWith("57P0", StringComparison.Ordinal);

    private static async Task<string> BodyHash(HttpRequest request)
    {
        // A photograph is told apart by its own checksum header, not read twice; JSON is buffered by the pipeline.
        if (!request.Body.CanSeek)
            return $"{request.ContentType} {request.ContentLength} {request.Headers["Content-Digest"]}";
        request.Body.Position = 0;
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(request.Body));
    }

    private sealed class Kept(KeptAnswer answer) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            var response = httpContext.Response;
            response.StatusCode = answer.Status;
            if (answer.ETag is not null)
                response.Headers.ETag = answer.ETag;
            if (answer.Location is not null)
                response.Headers.Location = answer.Location;
            if (answer.Body.Length == 0)
                return;
            response.ContentType = "application/json; charset=utf-8";
            await response.WriteAsync(answer.Body, CancellationToken.None);
        }
    }
}
