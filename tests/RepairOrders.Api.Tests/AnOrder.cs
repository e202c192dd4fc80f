namespace RepairOrders.Api.Tests;

/// <summary>Orders at a stage, reached by doing what people do. Each step's file adds its own.</summary>
internal static partial class AnOrder;
