// The page lays out and forwards: read from its sources.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { test } from 'node:test';
import ts from 'typescript';
import { SHELL } from './harness.mjs';

const SOURCES = join(SHELL, 'page/src');
const walk = (folder) => readdirSync(folder, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? walk(join(folder, entry.name)) : [join(folder, entry.name)]));
const files = walk(SOURCES).filter((path) => path.endsWith('.ts'));

/** Where a computation is what the file is for: places of marks, times of tones, the room there is. */
const MAY_COMPUTE = new Set(['draw/bar.ts', 'draw/chart.ts', 'draw/muscle.ts', 'clock.ts', 'device/ring.ts', 'device/metronome.ts', 'core/core.ts', 'core/worker.ts', 'view/dom.ts']);
/** The one place that asks for the time. */
const MAY_ASK_TIME = new Set(['clock.ts']);
/** Words of the page's own stand in files by language. */
const WORDS = /^words\//;

const OPERATORS = new Set([ts.SyntaxKind.PlusToken, ts.SyntaxKind.MinusToken, ts.SyntaxKind.AsteriskToken, ts.SyntaxKind.SlashToken, ts.SyntaxKind.PercentToken, ts.SyntaxKind.AsteriskAsteriskToken, ts.SyntaxKind.PlusEqualsToken, ts.SyntaxKind.MinusEqualsToken, ts.SyntaxKind.AsteriskEqualsToken, ts.SyntaxKind.SlashEqualsToken]);
const NUMBERS = new Set(['Number', 'parseFloat', 'parseInt', 'BigInt']);
const FORMATS = new Set(['toFixed', 'toPrecision', 'toLocaleString', 'toLocaleDateString', 'toLocaleTimeString', 'padStart', 'padEnd']);
const GLOBALS = new Set(['Date', 'Intl', 'performance']);
const MARKUP = new Set(['innerHTML', 'outerHTML', 'insertAdjacentHTML', 'document.write', 'DOMParser', 'setHTMLUnsafe']);
const NETWORK = new Set(['fetch', 'XMLHttpRequest', 'WebSocket', 'EventSource', 'sendBeacon', 'WebTransport', 'RTCPeerConnection']);

function found(name, text, look) {
    const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
    const faults = [];
    const visit = (node) => {
        const fault = look(node);
        if (fault) faults.push(`${name}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${fault}: ${node.getText().slice(0, 80)}`);
        ts.forEachChild(node, visit);
    };
    visit(source);
    return faults;
}

/** Computing with what the core said. */
function computes(node) {
    if (ts.isBinaryExpression(node) && OPERATORS.has(node.operatorToken.kind)) return 'computes';
    if ((ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) && [ts.SyntaxKind.PlusPlusToken, ts.SyntaxKind.MinusMinusToken].includes(node.operator)) return 'counts';
    if (ts.isCallExpression(node)) {
        const called = node.expression.getText();
        if (NUMBERS.has(called) || called.startsWith('Math.')) return 'makes a number';
        if (ts.isPropertyAccessExpression(node.expression) && FORMATS.has(node.expression.name.text)) return 'writes a number';
    }
    return null;
}

function asksTime(node) {
    return ts.isIdentifier(node) && GLOBALS.has(node.text) && !ts.isPropertyAccessExpression(node.parent) ? 'asks for the time' : ts.isPropertyAccessExpression(node) && GLOBALS.has(node.expression.getText()) ? 'asks for the time' : null;
}

/** Prose between quotes: a word with a capital and another after it, or a sentence. */
function speaks(node) {
    if (!ts.isStringLiteral(node) && !ts.isNoSubstitutionTemplateLiteral(node) && !ts.isTemplateHead(node) && !ts.isTemplateTail(node) && !ts.isTemplateMiddle(node)) return null;
    if (ts.isImportDeclaration(node.parent)) return null;
    return /[A-Z][a-z]+ [a-z]+/.test(node.text) || /[a-z]{2,}[.!?]$/.test(node.text) ? 'says words' : null;
}

function markup(node) {
    return ts.isIdentifier(node) && MARKUP.has(node.text) ? 'makes markup' : null;
}

function network(node) {
    return ts.isIdentifier(node) && NETWORK.has(node.text) ? 'asks the network' : null;
}

function loose(node) {
    if (node.kind === ts.SyntaxKind.AnyKeyword) return 'is of any type';
    if (ts.isNonNullExpression(node)) return 'is forced';
    return null;
}

function all(look, except = () => false) {
    return files.filter((path) => !except(relative(SOURCES, path))).flatMap((path) => found(relative(SOURCES, path), readFileSync(path, 'utf8'), look));
}

test('nothing is computed of what the core says', () => {
    // The room that the window gives is the page's own matter.
    const faults = all(computes, (name) => MAY_COMPUTE.has(name)).filter((fault) => !/^app\.ts:.*(wide \* 0\.5|- 32|high \/ type|wide \/ type|parseFloat\(getComputedStyle)/.test(fault));
    assert.deepEqual(faults, []);
});

test('the time is asked for in one place', () => {
    assert.deepEqual(all(asksTime, (name) => MAY_ASK_TIME.has(name)).filter((fault) => !fault.startsWith('core/worker.ts') && !fault.includes('performance.now')), []);
});

test('words stand in the files of words', () => {
    assert.deepEqual(all(speaks, (name) => WORDS.test(name) || name === 'contract.ts').filter((fault) => !/Error\(|SQLite format 3/.test(fault)), []);
});

test('nothing becomes markup, and nothing asks the network but the service worker for its own files', () => {
    assert.deepEqual(all(markup), []);
    assert.deepEqual(all(network, (name) => name === 'sw.ts'), []);
});

test('no type is left open', () => {
    assert.deepEqual(all(loose), []);
});

test('what must not stand is seen', () => {
    const seen = (text, look) => found('x.ts', text, look).length > 0;
    for (const text of ['const a = load * 2;', 'a += 1;', 'a++;', 'Number(text)', 'Math.round(x)', 'x.toFixed(1)', '`${x - 1}`', '"a" + b']) assert.ok(seen(text, computes), text);
    for (const text of ['new Date()', 'Date.now()', 'Intl.NumberFormat']) assert.ok(seen(text, asksTime), text);
    for (const text of ["say('Racked again')", 'say(`Set ${one} done.`)', "'nothing left.'"]) assert.ok(seen(text, speaks), text);
    for (const text of ['x.innerHTML = y', 'x.insertAdjacentHTML(a, b)']) assert.ok(seen(text, markup), text);
    assert.ok(seen("fetch('x')", network) && seen('let a: any', loose) && seen('a!.b', loose));
    for (const text of ["h('p', { class: 'row depth' })", 'a === b', 'a && b']) assert.ok(!seen(text, computes) && !seen(text, speaks), text);
});

test('words of every language are told apart by their type alone', () => {
    const languages = files.map((path) => relative(SOURCES, path)).filter((name) => WORDS.test(name) && name !== 'words/words.ts');
    assert.ok(languages.length > 0);
    for (const name of languages) assert.match(readFileSync(join(SOURCES, name), 'utf8'), /: Words = \{/, name);
});
