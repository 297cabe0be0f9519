namespace Forming.Drawing.Dxf;

/// <summary>The sections of a file around its entities: what the format asks for and nothing more.</summary>
internal sealed class DxfDocument
{
    private const string ModelSpace = "1F";
    private const string PaperSpace = "1B";
    private const string Dictionary = "C";
    private const string GroupDictionary = "D";

    // Entities are numbered apart from the records around them.
    private readonly DxfText _entities = new(firstHandle: 0x100);
    private readonly DxfText _text = new(firstHandle: 0x20);
    private readonly List<DxfLayer> _layers = [];

    /// <summary>Draws a straight line.</summary>
    /// <param name="layer">Its layer.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    public void Line(DxfLayer layer, Point from, Point to) =>
        Entity("LINE", layer, "AcDbLine").Add(10, from).Add(11, to);

    /// <summary>Draws a polygon.</summary>
    /// <param name="layer">Its layer.</param>
    /// <param name="corners">[n] corners, the first not repeated.</param>
    public void Polygon(DxfLayer layer, IReadOnlyCollection<Point> corners)
    {
        Entity("LWPOLYLINE", layer, "AcDbPolyline").Add(90, corners.Count).Add(70, 1).Add(43, 0.0);
        foreach (var corner in corners)
            _entities.Add(10, corner.X).Add(20, corner.Y);
    }

    /// <summary>Writes a line of text.</summary>
    /// <param name="layer">Its layer.</param>
    /// <param name="at">Left end of its baseline.</param>
    /// <param name="height">Height of its capitals.</param>
    /// <param name="text">The text.</param>
    /// <param name="turnDegrees">Turned counter-clockwise [°].</param>
    public void Text(DxfLayer layer, Point at, double height, string text, double turnDegrees = 0) =>
        Entity("TEXT", layer, "AcDbText").Add(10, at).Add(40, height).AddWords(1, text).Add(50, turnDegrees).Add(7, "Standard")
            .Add(100, "AcDbText");

    /// <summary>The whole file.</summary>
    /// <param name="isInch">Inches, else millimetres.</param>
    /// <param name="least">Lower left corner of what is drawn.</param>
    /// <param name="most">Upper right corner of what is drawn.</param>
    public string Finish(bool isInch, Point least, Point most)
    {
        Header(isInch, least, most);
        _text.Add(0, "SECTION").Add(2, "CLASSES").Add(0, "ENDSEC");
        Tables(least, most);
        Blocks();
        var start = _text.Add(0, "SECTION").Add(2, "ENTITIES").ToString() + _entities;
        return start + Objects();
    }

    private DxfText Entity(string kind, DxfLayer layer, string subclass)
    {
        if (!_layers.Contains(layer))
            _layers.Add(layer);
        return _entities.Add(0, kind).AddHandle().Add(330, ModelSpace).Add(100, "AcDbEntity").Add(8, layer.Name).Add(100, subclass);
    }

    private void Header(bool isInch, Point least, Point most) => _text
        .Add(0, "SECTION").Add(2, "HEADER")
        .Add(9, "$ACADVER").Add(1, "AC1015")
        .Add(9, "$DWGCODEPAGE").Add(3, "ANSI_1252")
        .Add(9, "$INSBASE").Add(10, Point.Origin)
        .Add(9, "$EXTMIN").Add(10, least)
        .Add(9, "$EXTMAX").Add(10, most)
        .Add(9, "$LTSCALE").Add(40, isInch ? 0.4 : 10)
        .Add(9, "$HANDSEED").Add(5, DxfText.Seed)
        .Add(9, "$INSUNITS").Add(70, isInch ? 1 : 4)
        .Add(9, "$MEASUREMENT").Add(70, isInch ? 0 : 1)
        .Add(0, "ENDSEC");

    private void Tables(Point least, Point most)
    {
        _text.Add(0, "SECTION").Add(2, "TABLES");
        ViewPorts(least, most);
        Table("LTYPE", "5", 4);
        LineType("ByBlock", "", []);
        LineType("ByLayer", "", []);
        LineType("Continuous", "Solid line", []);
        LineType("DASHED", "Dashed __ __ __", [0.6, -0.3]);
        _text.Add(0, "ENDTAB");
        Table("LAYER", "2", _layers.Count + 1);
        Layer(new("0", 7));
        foreach (var layer in _layers)
            Layer(layer);
        _text.Add(0, "ENDTAB");
        Table("STYLE", "3", 1);
        Record("STYLE", "AcDbTextStyleTableRecord").Add(2, "Standard").Add(70, 0).Add(40, 0.0).Add(41, 1.0).Add(50, 0.0).Add(71, 0)
            .Add(42, 2.5).Add(3, "txt").Add(4, "");
        _text.Add(0, "ENDTAB");
        Table("VIEW", "6", 0);
        _text.Add(0, "ENDTAB");
        Table("UCS", "7", 0);
        _text.Add(0, "ENDTAB");
        Table("APPID", "9", 1);
        Record("APPID", "AcDbRegAppTableRecord").Add(2, "ACAD").Add(70, 0);
        _text.Add(0, "ENDTAB");
        DimensionStyles();
        BlockRecords();
        _text.Add(0, "ENDSEC");
    }

    private void Table(string name, string handle, int count) =>
        _text.Add(0, "TABLE").Add(2, name).Add(5, handle).Add(330, "0").Add(100, "AcDbSymbolTable").Add(70, count);

    private DxfText Record(string kind, string subclass) =>
        _text.Add(0, kind).AddHandle().Add(100, "AcDbSymbolTableRecord").Add(100, subclass);

    private void ViewPorts(Point least, Point most)
    {
        Table("VPORT", "8", 1);
        var middle = 0.5 * (least + most);
        var height = Math.Max(most.Y - least.Y, (most.X - least.X) / 1.5) * 1.05;
        Record("VPORT", "AcDbViewportTableRecord").Add(2, "*Active").Add(70, 0).Add(10, 0.0).Add(20, 0.0).Add(11, 1.0).Add(21, 1.0)
            .Add(12, middle.X).Add(22, middle.Y).Add(13, 0.0).Add(23, 0.0).Add(14, 1.0).Add(24, 1.0).Add(15, 1.0).Add(25, 1.0)
            .Add(16, 0.0).Add(26, 0.0).Add(36, 1.0).Add(17, 0.0).Add(27, 0.0).Add(37, 0.0).Add(40, height).Add(41, 1.5).Add(42, 50.0)
            .Add(43, 0.0).Add(44, 0.0).Add(50, 0.0).Add(51, 0.0).Add(71, 0).Add(72, 100).Add(73, 1).Add(74, 3).Add(75, 0).Add(76, 0)
            .Add(77, 0).Add(78, 0);
        _text.Add(0, "ENDTAB");
    }

    private void LineType(string name, string description, double[] dashes)
    {
        Record("LTYPE", "AcDbLinetypeTableRecord").Add(2, name).Add(70, 0).Add(3, description).Add(72, 65).Add(73, dashes.Length)
            .Add(40, dashes.Sum(Math.Abs));
        foreach (var dash in dashes)
            _text.Add(49, dash).Add(74, 0);
    }

    private void Layer(DxfLayer layer) =>
        Record("LAYER", "AcDbLayerTableRecord").Add(2, layer.Name).Add(70, 0).Add(62, layer.Colour).Add(6, layer.LineType).Add(370, -3)
            .Add(390, "F");

    private void DimensionStyles()
    {
        Table("DIMSTYLE", "A", 1);
        _text.Add(100, "AcDbDimStyleTable").Add(71, 0);
        _text.Add(0, "DIMSTYLE").Add(105, "10").Add(330, "A").Add(100, "AcDbSymbolTableRecord").Add(100, "AcDbDimStyleTableRecord")
            .Add(2, "Standard").Add(70, 0).Add(0, "ENDTAB");
    }

    private void BlockRecords()
    {
        Table("BLOCK_RECORD", "1", 2);
        foreach (var (handle, name) in new[] { (ModelSpace, "*Model_Space"), (PaperSpace, "*Paper_Space") })
        {
            _text.Add(0, "BLOCK_RECORD").Add(5, handle).Add(330, "1").Add(100, "AcDbSymbolTableRecord")
                .Add(100, "AcDbBlockTableRecord").Add(2, name);
        }

        _text.Add(0, "ENDTAB");
    }

    private void Blocks()
    {
        _text.Add(0, "SECTION").Add(2, "BLOCKS");
        foreach (var (owner, name, isPaper) in new[] { (ModelSpace, "*Model_Space", false), (PaperSpace, "*Paper_Space", true) })
        {
            Space(_text.Add(0, "BLOCK").AddHandle().Add(330, owner).Add(100, "AcDbEntity"), isPaper)
                .Add(8, "0").Add(100, "AcDbBlockBegin").Add(2, name).Add(70, 0).Add(10, Point.Origin).Add(3, name).Add(1, "");
            Space(_text.Add(0, "ENDBLK").AddHandle().Add(330, owner).Add(100, "AcDbEntity"), isPaper).Add(8, "0").Add(100, "AcDbBlockEnd");
        }

        _text.Add(0, "ENDSEC");

        static DxfText Space(DxfText text, bool isPaper) => isPaper ? text.Add(67, 1) : text;
    }

    private static string Objects() => new DxfText(firstHandle: 0).Add(0, "ENDSEC").Add(0, "SECTION").Add(2, "OBJECTS")
        .Add(0, "DICTIONARY").Add(5, Dictionary).Add(330, "0").Add(100, "AcDbDictionary").Add(281, 1)
        .Add(3, "ACAD_GROUP").Add(350, GroupDictionary).Add(3, "ACAD_PLOTSTYLENAME").Add(350, "E")
        .Add(0, "DICTIONARY").Add(5, GroupDictionary).Add(330, Dictionary).Add(100, "AcDbDictionary").Add(281, 1)
        .Add(0, "ACDBDICTIONARYWDFLT").Add(5, "E").Add(330, Dictionary).Add(100, "AcDbDictionary").Add(281, 1)
        .Add(3, "Normal").Add(350, "F").Add(100, "AcDbDictionaryWithDefault").Add(340, "F")
        .Add(0, "ACDBPLACEHOLDER").Add(5, "F").Add(330, "E")
        .Add(0, "ENDSEC").Add(0, "EOF").ToString();
}
