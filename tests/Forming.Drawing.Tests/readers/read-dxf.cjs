// Reads a DXF file from standard input; writes header and entities as JSON.
const { readFileSync } = require('node:fs');
const DxfParser = require('dxf-parser');

const Parser = DxfParser.default ?? DxfParser;
const { header, entities, tables } = new Parser().parseSync(readFileSync(0, 'latin1'));
process.stdout.write(JSON.stringify({ header, entities, layers: Object.keys(tables.layer.layers) }));
