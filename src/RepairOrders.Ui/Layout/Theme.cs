using MudBlazor;

namespace RepairOrders.Ui.Layout;

/// <summary>The component library in the drawing office's paper, ink and one accent; tokens as in sheet.css.</summary>
internal static class Theme
{
    private static readonly string[] Text = ["Sheet", "system-ui", "sans-serif"];

    public static readonly MudTheme Sheet = new()
    {
        PaletteLight = new PaletteLight
        {
            Primary = "#23497f",
            Secondary = "#55626d",
            Tertiary = "#55626d",
            Background = "#f3f1ea",
            Surface = "#fbfaf6",
            TextPrimary = "#1c2733",
            TextSecondary = "#55626d",
            ActionDefault = "#55626d",
            Divider = "#c8c9c3",
            DividerLight = "#e2e1da",
            LinesDefault = "#c8c9c3",
            LinesInputs = "#55626d",
            TableLines = "#e2e1da",
            Success = "#2c6a4d",
            Warning = "#8a5a00",
            Error = "#a0322a",
            Info = "#23497f",
            AppbarBackground = "#fbfaf6",
            AppbarText = "#1c2733",
            DrawerBackground = "#fbfaf6",
        },
        PaletteDark = new PaletteDark
        {
            Primary = "#8fb4ea",
            Secondary = "#9fabb4",
            Tertiary = "#9fabb4",
            Background = "#12181e",
            Surface = "#182028",
            TextPrimary = "#e6e8e6",
            TextSecondary = "#9fabb4",
            ActionDefault = "#9fabb4",
            Divider = "#38444e",
            DividerLight = "#26313a",
            LinesDefault = "#38444e",
            LinesInputs = "#9fabb4",
            TableLines = "#26313a",
            Success = "#7cc39d",
            Warning = "#e0b25c",
            Error = "#ef8d80",
            Info = "#8fb4ea",
            AppbarBackground = "#182028",
            AppbarText = "#e6e8e6",
            DrawerBackground = "#182028",
            PrimaryContrastText = "#12181e",
        },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "2px" },
        Typography = new Typography
        {
            Default = new DefaultTypography
            {
                FontFamily = Text,
                FontSize = "1rem",
                LineHeight = "1.42",
            },
            Button = new ButtonTypography
            {
                FontFamily = Text,
                FontWeight = "600",
                TextTransform = "none",
                FontSize = "1rem",
            },
        },
    };
}
