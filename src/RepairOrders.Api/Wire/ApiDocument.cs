using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc.ApiExplorer;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;
using Scalar.AspNetCore;

namespace RepairOrders.Api.Wire;

/// <summary>The interface described: OpenAPI 3.1 at /openapi/v1.json and a readable page at /api/docs, all of it served from here.</summary>
internal static class ApiDocument
{
    public static void AddApiDocument(this IServiceCollection services) =>
        services.AddOpenApi(
            "v1",
            options =>
            {
                options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
                options.AddDocumentTransformer(Head);
                options.AddOperationTransformer(Describe);
                options.AddSchemaTransformer(Shape);
            }
        );

    public static void MapApiDocument(this IEndpointRouteBuilder app)
    {
        app.MapOpenApi("/openapi/{documentName}.json");
        app.MapScalarApiReference(
            "/api/docs",
            page =>
            {
                page.WithTitle("RepairOrders: REST interface").WithOpenApiRoutePattern("/openapi/{documentName}.json");
                page.DisableDefaultFonts().DisableTelemetry().DisableAgent().DisableMcp().HideClientButton();
            }
        );
    }

    private static Task Head(
        OpenApiDocument document,
        OpenApiDocumentTransformerContext context,
        CancellationToken stop
    )
    {
        document.Info = new OpenApiInfo
        {
            Title = "RepairOrders",
            Version = "v1",
            Description =
                "Work orders for temporary pipe repairs. Sign in with POST /api/v1/session and send the token as a bearer. "
                + "Every PUT and DELETE of something with a version needs If-Match; every write takes an Idempotency-Key. "
                + "Errors are problem details with a code; a refusal by the procedure is 409 and says who can clear it. "
                + "Asks are read strictly: a field that is unknown, missing or given twice is refused.",
        };
        document.Servers = [];
        document.Components ??= new OpenApiComponents();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            ["token"] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "The opaque token of a session.",
            },
        };
        return Task.CompletedTask;
    }

    private static Task Describe(
        OpenApiOperation operation,
        OpenApiOperationTransformerContext context,
        CancellationToken stop
    )
    {
        var metadata = context.Description.ActionDescriptor.EndpointMetadata;
        operation.Tags = new HashSet<OpenApiTagReference>
        {
            new(Tag(context.Description.RelativePath), context.Document),
        };
        var need = metadata.OfType<Need>().LastOrDefault()?.Permission;
        if (need is { } permission)
        {
            operation.Description =
                $"Needs {Words.Of(permission)}: {string.Join(", ", RoleRules.RolesFor(permission).Select(r => Words.Of(r)))}.";
            operation.Security =
            [
                new OpenApiSecurityRequirement { [new OpenApiSecuritySchemeReference("token", context.Document)] = [] },
            ];
        }
        if (IsKeyed(context.Description, metadata))
            Header(operation, "Idempotency-Key", "The same key and ask give the first answer again.");
        if (TakesVersion(metadata))
            Header(operation, "If-Match", "The version seen, as the ETag of the answer it was seen in.");
        operation.Responses ??= new OpenApiResponses();
        operation.Responses["default"] = new OpenApiResponse
        {
            Description = "A problem: code, detail, for a malformed ask the fields, for a refusal who can clear it.",
        };
        return Task.CompletedTask;
    }

    private static bool IsKeyed(ApiDescription description, IList<object> metadata) =>
        !HttpMethods.IsGet(description.HttpMethod ?? "")
        && Tag(description.RelativePath) is not ("session" or "first-administrator")
        && metadata.All(m => m is not NoAnswerKept);

    private static bool TakesVersion(IEnumerable<object> metadata) =>
        metadata
            .OfType<System.Reflection.MethodInfo>()
            .SelectMany(m => m.GetParameters())
            .Any(p => p.ParameterType == typeof(SeenVersion));

    private static string Tag(string? path) => path?.Split('/').ElementAtOrDefault(2) ?? "service";

    private static void Header(OpenApiOperation operation, string name, string words)
    {
        operation.Parameters ??= [];
        operation.Parameters.Add(
            new OpenApiParameter
            {
                Name = name,
                In = ParameterLocation.Header,
                Required = true,
                Description = words,
                Schema = new OpenApiSchema { Type = JsonSchemaType.String },
            }
        );
    }

    // A measure has a converter of its own, which the generator cannot look into.
    private static Task Shape(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken stop)
    {
        schema.AdditionalPropertiesAllowed = true;
        if (context.JsonTypeInfo.Type != typeof(Measure))
            return Task.CompletedTask;
        var field = context
            .JsonPropertyInfo?.AttributeProvider?.GetCustomAttributes(typeof(MeasuredInAttribute), false)
            .OfType<MeasuredInAttribute>()
            .FirstOrDefault();
        schema.Type = null;
        schema.Properties = null;
        schema.Required = null;
        schema.Description = field is null
            ? "A measured value."
            : $"{field.Allowed}; a number is read in {field.Unit}, text may carry one of {string.Join(", ", Units.AcceptedFor(field.Unit))}.";
        schema.OneOf =
        [
            new OpenApiSchema { Type = JsonSchemaType.Number },
            new OpenApiSchema { Type = JsonSchemaType.String, Examples = [JsonValue.Create($"6.1 {field?.Unit}")] },
            new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                Required = new HashSet<string> { "value", "unit", "entered" },
                Properties = new Dictionary<string, IOpenApiSchema>
                {
                    ["value"] = new OpenApiSchema { Type = JsonSchemaType.Number },
                    ["unit"] = new OpenApiSchema { Type = JsonSchemaType.String },
                    ["entered"] = new OpenApiSchema { Type = JsonSchemaType.String, Description = "What was typed." },
                },
            },
        ];
        return Task.CompletedTask;
    }
}
