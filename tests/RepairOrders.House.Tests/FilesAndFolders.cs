using RepairOrders.Api;
using RepairOrders.Api.Orders;

namespace RepairOrders.House.Tests;

public sealed class FilesAndFolders
{
    private static readonly string[] Top =
    [
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "src",
        "tests",
        "deploy",
        "docker-compose.yml",
        "RepairOrders.sln",
        "Directory.Build.props",
        "Directory.Packages.props",
        "global.json",
    ];

    // What the build and a running service leave behind; git does not see it.
    private static readonly string[] Unseen = ["out", "data", "TestResults", "BenchmarkDotNet.Artifacts"];

    /// <summary>The steps of the procedure: the folders of the API in which something is signed.</summary>
    public static TheoryData<string> Steps =>
        [
            .. typeof(RepairOrdersApi)
                .Assembly.GetTypes()
                .Where(t => typeof(SignedRecord).IsAssignableFrom(t) && !t.IsAbstract)
                .Select(t => t.Namespace!.Split('.')[2])
                .Distinct()
                .Order(),
        ];

    [Fact]
    public void The_top_level_holds_what_a_newcomer_needs_and_nothing_else() =>
        Directory
            .EnumerateFileSystemEntries(House.Root)
            .Select(entry => Path.GetFileName(entry)!)
            .Where(name => !name.StartsWith('.'))
            .Except(Unseen)
            .Except(Top)
            .ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step_has_its_namesake_on_the_wire(string step) =>
        File.Exists(House.Under("src", "RepairOrders.Contract", $"{step}.cs")).ShouldBeTrue();

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step_has_its_namesake_in_the_tests(string step) =>
        Directory.Exists(House.Under("tests", "RepairOrders.Api.Tests", step)).ShouldBeTrue();

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step_has_its_namesake_on_screen(string step) =>
        Directory.EnumerateFiles(House.Under("src", "RepairOrders.Ui", step)).ShouldNotBeEmpty();

    [Theory]
    [MemberData(nameof(Steps))]
    public void A_step_has_its_own_endpoints(string step) =>
        Directory.EnumerateFiles(House.Under("src", "RepairOrders.Api", step), "*Endpoints.cs").ShouldNotBeEmpty();
}
