// The contract's types in TypeScript, from its JSON Schema on standard input.
//
// What the schema can say and this does not know is an error: the types must not be looser than the
// contract.

import { readFileSync } from 'node:fs';

const schema = JSON.parse(readFileSync(0, 'utf8'));
const HEAD = `// Made from the contract's JSON Schema by tools/contract.mjs, which the check runs and compares.\n`;

function name(ref) {
    const found = /^#\/\$defs\/(\w+)$/.exec(ref);
    if (!found) throw new Error(`a reference to ${ref}`);
    return found[1];
}

function comment(node, indent) {
    if (!node.description) return '';
    const lines = node.description.split('\n').map((line) => line.replaceAll('*/', '* /'));
    if (lines.length === 1) return `${indent}/** ${lines[0]} */\n`;
    return `${indent}/**\n${lines.map((line) => `${indent} * ${line}`.trimEnd()).join('\n')}\n${indent} */\n`;
}

const PLAIN = { string: 'string', integer: 'number', number: 'number', boolean: 'boolean', null: 'null' };

function object(node, indent) {
    if (node.additionalProperties && typeof node.additionalProperties === 'object') throw new Error('a map');
    const needed = new Set(node.required ?? []);
    const fields = Object.entries(node.properties ?? {}).map(
        ([key, field]) =>
            `${comment(field, `${indent}    `)}${indent}    ${key}${needed.has(key) ? '' : '?'}: ${type(field, `${indent}    `)};\n`,
    );
    return `{\n${fields.join('')}${indent}}`;
}

function type(node, indent = '') {
    if (node.$ref) return name(node.$ref);
    if (node.const !== undefined) return JSON.stringify(node.const);
    if (node.enum) return node.enum.map((one) => JSON.stringify(one)).join(' | ');
    const any = node.oneOf ?? node.anyOf;
    if (any) {
        const kinds = any.map((one) => `${comment(one, `${indent}    `)}${indent}    | ${type(one, `${indent}    `)}`);
        return `\n${kinds.join('\n')}`;
    }
    if (Array.isArray(node.type)) return node.type.map((one) => type({ ...node, type: one }, indent)).join(' | ');
    if (node.type === 'array') return `readonly (${type(node.items, indent)})[]`;
    if (node.type === 'object') return object(node, indent);
    if (PLAIN[node.type]) return PLAIN[node.type];
    throw new Error(`a schema of ${JSON.stringify(node).slice(0, 200)}`);
}

let out = HEAD;
for (const [key, node] of Object.entries(schema.$defs).sort(([a], [b]) => (a < b ? -1 : 1))) {
    out += `\n${comment(node, '')}`;
    out += node.type === 'object' && !node.oneOf ? `export interface ${key} ${object(node, '')}\n` : `export type ${key} = ${type(node)};\n`;
}
process.stdout.write(out);
