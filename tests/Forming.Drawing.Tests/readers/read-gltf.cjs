// Validates a binary glTF file from standard input; writes the validator's report as JSON.
const { readFileSync } = require('node:fs');
const validator = require('gltf-validator');

validator.validateBytes(new Uint8Array(readFileSync(0))).then((report) => process.stdout.write(JSON.stringify(report)));
