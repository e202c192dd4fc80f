using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;
using RepairOrders.Api;
using RepairOrders.Api.Orders;

namespace RepairOrders.House.Tests;

// Who may reference whom. The borders between maths and procedure, wire and store, screen and server are projects.
public sealed class Arrows
{
    private static readonly Assembly Api = typeof(RepairOrdersApi).Assembly;

    [Theory]
    [InlineData("Engineering", "")]
    [InlineData("Contract", "")]
    [InlineData("Ui", "Contract")]
    [InlineData("Api", "Contract Engineering")]
    [InlineData("Host", "Api Ui")]
    public void A_project_references_what_it_may_and_no_more(string project, string others)
    {
        var file = House.Under("src", $"RepairOrders.{project}", $"RepairOrders.{project}.csproj");
        XDocument
            .Load(file)
            .Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value).Split('.')[^1])
            .Order()
            .ShouldBe(others.Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void The_api_shows_one_type() => Api.GetExportedTypes().ShouldBe([typeof(RepairOrdersApi)]);

    [Fact]
    public void The_wire_knows_the_framework_and_units_only() =>
        References("Contract")
            .Where(name => !name.StartsWith("System", StringComparison.Ordinal) && name != "netstandard")
            .ShouldBe(["UnitsNet"]);

    [Fact]
    public void The_screens_see_neither_server_nor_engine_nor_store()
    {
        foreach (var name in References("Ui"))
        {
            name.ShouldNotBe("RepairOrders.Api");
            name.ShouldNotBe("RepairOrders.Engineering");
            name.ShouldNotStartWith("Microsoft.EntityFrameworkCore");
            name.ShouldNotStartWith("Npgsql");
        }
    }

    [Fact]
    public void The_engine_knows_no_web_no_store_and_no_order()
    {
        foreach (var name in References("Engineering"))
        {
            name.ShouldNotStartWith("Microsoft.");
            name.ShouldNotStartWith("RepairOrders.");
            name.ShouldNotStartWith("Npgsql");
            name.ShouldNotStartWith("System.Net");
            name.ShouldNotStartWith("System.Data");
        }
    }

    [Fact]
    public void The_engine_reaches_no_file_no_clock_no_chance_and_no_console()
    {
        string[] types =
        [
            "System.IO.File",
            "System.IO.FileInfo",
            "System.IO.FileStream",
            "System.IO.Directory",
            "System.IO.DirectoryInfo",
            "System.Console",
            "System.Diagnostics.Process",
            "System.Random",
            "System.TimeProvider",
            "System.Threading.Thread",
        ];
        string[] members =
        [
            "System.DateTime.get_Now",
            "System.DateTime.get_UtcNow",
            "System.DateTime.get_Today",
            "System.DateTimeOffset.get_Now",
            "System.DateTimeOffset.get_UtcNow",
            "System.Guid.NewGuid",
            "System.Guid.CreateVersion7",
        ];
        var used = MembersUsedBy("Engineering");
        used.Count.ShouldBeGreaterThan(100);
        used.Where(u => types.Contains(u.Type) || members.Contains($"{u.Type}.{u.Member}")).ShouldBeEmpty();
    }

    // A rule is a pure function of order, person and time: it can be asked without a store and without a request.
    [Fact]
    public void Records_and_their_rules_name_no_type_of_store_or_web()
    {
        var records = Api.GetTypes().Where(t => typeof(SignedRecord).IsAssignableFrom(t)).ToList();
        records.Count.ShouldBeGreaterThan(3);
        foreach (var record in records)
        {
            var named = record
                .GetMethods(All)
                .SelectMany(m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType))
                .Concat(record.GetProperties(All).Select(p => p.PropertyType))
                .Concat(record.GetFields(All).Select(f => f.FieldType));
            foreach (var type in named)
            {
                var space = type.Namespace ?? "";
                space.ShouldNotStartWith("Microsoft.", customMessage: $"{record.Name} names {type.Name}");
                space.ShouldNotStartWith("Npgsql", customMessage: $"{record.Name} names {type.Name}");
                space.ShouldNotBe("RepairOrders.Api.Store", $"{record.Name} names {type.Name}");
            }
        }
    }

    private const BindingFlags All =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Static
        | BindingFlags.Instance
        | BindingFlags.DeclaredOnly;

    private static IEnumerable<string> References(string project) =>
        Assembly.Load($"RepairOrders.{project}").GetReferencedAssemblies().Select(a => a.Name!);

    private static List<(string Type, string Member)> MembersUsedBy(string project)
    {
        using var file = File.OpenRead(Assembly.Load($"RepairOrders.{project}").Location);
        using var image = new PEReader(file);
        var metadata = image.GetMetadataReader();
        return
        [
            .. metadata
                .MemberReferences.Select(metadata.GetMemberReference)
                .Where(member => member.Parent.Kind == HandleKind.TypeReference)
                .Select(member =>
                {
                    var type = metadata.GetTypeReference((TypeReferenceHandle)member.Parent);
                    return (
                        $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}",
                        metadata.GetString(member.Name)
                    );
                }),
        ];
    }
}
