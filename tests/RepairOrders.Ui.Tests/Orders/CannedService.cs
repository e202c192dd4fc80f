using System.Net;
using System.Net.Http.Json;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Tests.Orders;

/// <summary>A service that answers every read from the canned order and remembers what was written to it.</summary>
internal sealed class CannedService : HttpMessageHandler, IHttpClientFactory
{
    public List<string> Written { get; } = [];

    public HttpClient CreateClient(string name) => new(this, disposeHandler: false);

    protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken stop)
    {
        var path = request.RequestUri!.AbsolutePath.Split('/')[^1];
        if (request.Method != HttpMethod.Get && path != "sizing-previews")
            Written.Add($"{request.Method} {path}");
        var answer = CannedOrder.Answer(path);
        return Task.FromResult(
            answer is null
                ? new HttpResponseMessage(HttpStatusCode.NotFound)
                : new HttpResponseMessage
                {
                    Content = JsonContent.Create(answer, answer.GetType(), null, RepairOrdersClient.Json),
                }
        );
    }
}
