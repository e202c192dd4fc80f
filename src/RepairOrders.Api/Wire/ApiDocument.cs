using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;
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
            (page, http) =>
            {
                // Its start-up script stands in the page itself; only that one, marked for this answer, may run.
                var once = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
                http.Response.Headers.ContentSecurityPolicy =
                    $"default-src 'self'; script-src 'self' 'nonce-{once}'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
                    + "font-src 'self' data:; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; object-src 'none'";
                page.WithNonce(once);
                page.ShowDeveloperTools = DeveloperToolsVisibility.Never;
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
        document.AddComponent("Problem", Problem());
        foreach (var (name, schema) in document.Components.Schemas ?? new Dictionary<string, IOpenApiSchema>())
            if (typeof(Measure).Assembly.GetType($"{typeof(Measure).Namespace}.{name}") is { } type)
                SayUnits(type, schema);
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
            Description = "A problem.",
            Content = new Dictionary<string, OpenApiMediaType>
            {
                ["application/problem+json"] = new OpenApiMediaType
                {
                    Schema = new OpenApiSchemaReference("Problem", context.Document),
                },
            },
        };
        return Task.CompletedTask;
    }

    private static bool IsKeyed(ApiDescription description, IList<object> metadata) =>
        !HttpMethods.IsGet(description.HttpMethod ?? "")
        && Tag(description.RelativePath) is not ("session" or "first-administrator")
        && metadata.All(m => m is not NoAnswerKept);

    private static bool TakesVersion(IEnumerable<object> metadata) =>
        metadata
            .OfType<MethodInfo>()
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

    // A measure has a converter of its own, which the generator cannot look into; and it takes every field without a default
    // for one that must be sent.
    private static Task Shape(OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken stop)
    {
        schema.AdditionalPropertiesAllowed = true;
        if (context.JsonTypeInfo.Type == typeof(Measure))
            Measured(schema);
        else if (schema.Required is { } required)
            required.ExceptWith(context.JsonTypeInfo.Properties.Where(p => !p.IsRequired).Select(p => p.Name));
        return Task.CompletedTask;
    }

    private static void Measured(OpenApiSchema schema)
    {
        schema.Type = null;
        schema.Properties = null;
        schema.Required = null;
        schema.Description =
            "A measured value, kept as it was entered: a number in the field's own unit, text with any unit of its kind, or the object it comes back as.";
        schema.OneOf =
        [
            new OpenApiSchema { Type = JsonSchemaType.Number },
            new OpenApiSchema { Type = JsonSchemaType.String, Examples = [JsonValue.Create("150 psi")] },
            Fields(
                ("value", JsonSchemaType.Number),
                ("unit", JsonSchemaType.String),
                ("entered", JsonSchemaType.String)
            ),
        ];
    }

    private static void SayUnits(Type type, IOpenApiSchema schema)
    {
        foreach (var property in type.GetProperties())
            if (
                property.GetCustomAttribute<MeasuredInAttribute>() is { } field
                && schema.Properties is { } fields
                && fields.TryGetValue(JsonNamingPolicy.CamelCase.ConvertName(property.Name), out var at)
            )
                at.Description =
                    $"{at.Description} {field.Allowed}; units: {string.Join(", ", Units.AcceptedFor(field.Unit))}.";
    }

    private static OpenApiSchema Problem()
    {
        var problem = Fields(
            ("status", JsonSchemaType.Integer),
            ("code", JsonSchemaType.String),
            ("detail", JsonSchemaType.String),
            ("clears", JsonSchemaType.String),
            ("errors", JsonSchemaType.Object),
            ("traceId", JsonSchemaType.String)
        );
        problem.Description =
            "What is wrong: a stable code, a sentence, for a malformed ask the messages by field, for a refusal of the procedure who can clear it.";
        problem.Required = new HashSet<string> { "status", "code" };
        return problem;
    }

    private static OpenApiSchema Fields(params (string Name, JsonSchemaType Type)[] fields) =>
        new()
        {
            Type = JsonSchemaType.Object,
            Required = fields.Select(f => f.Name).ToHashSet(),
            Properties = fields.ToDictionary(f => f.Name, f => (IOpenApiSchema)new OpenApiSchema { Type = f.Type }),
        };
}
