// The page as values: a screen makes a tree of these, and what differs from the tree before is
// changed in place. So focus, scrolling and a finger on a key stay where they are.
//
// Words become text, never markup.

export type Handler = (event: Event) => void;

/** An element to be. */
export interface Made {
    readonly tag: string;
    readonly key: string;
    readonly attrs: Attrs;
    readonly kids: readonly (Made | string)[];
}

/** Attributes; `on…` are handlers, `--…` are variables for the style sheet, `value` is what an input
 *  is set to when it changes. */
export type Attrs = Readonly<Record<string, string | boolean | Handler | null | undefined>>;
export type Kid = Made | string | null | false | undefined;

const DRAWN = new Set(['svg', 'g', 'rect', 'line', 'path', 'circle', 'text', 'title', 'polyline', 'polygon']);
const SVG = 'http://www.w3.org/2000/svg';

/** Makes an element; empty words and absent children are left out. */
export function h(tag: string, attrs: Attrs = {}, ...kids: readonly (Kid | readonly Kid[])[]): Made {
    const key = attrs['key'];
    const there = kids.flat().filter((kid): kid is Made | string => kid !== null && kid !== false && kid !== undefined && kid !== '');
    return { tag, key: typeof key === 'string' ? key : '', attrs, kids: there };
}

interface Kept {
    made: Made;
    handlers: Map<string, Handler>;
}

const kept = new WeakMap<Element, Kept>();

/** Makes `into` hold these and nothing else. */
export function show(into: Element, kids: readonly Made[]): void {
    children(into, kids);
}

function create(kid: Made | string): Node {
    if (typeof kid === 'string') return document.createTextNode(kid);
    const element = DRAWN.has(kid.tag) ? document.createElementNS(SVG, kid.tag) : document.createElement(kid.tag);
    kept.set(element, { made: { ...kid, attrs: {}, kids: [] }, handlers: new Map() });
    update(element, kid);
    return element;
}

function fits(node: Node, kid: Made | string): boolean {
    if (typeof kid === 'string') return node.nodeType === Node.TEXT_NODE;
    const made = node instanceof Element ? kept.get(node)?.made : undefined;
    return made?.tag === kid.tag && made.key === kid.key;
}

function children(into: Element, kids: readonly (Made | string)[]): void {
    let at: ChildNode | null = into.firstChild;
    for (const kid of kids) {
        let found: ChildNode | null = null;
        if (at && fits(at, kid)) {
            found = at;
        } else if (typeof kid !== 'string' && kid.key) {
            for (let node = at; node && !found; node = node.nextSibling) if (fits(node, kid)) found = node;
        }
        if (!found) {
            into.insertBefore(create(kid), at);
            continue;
        }
        if (found === at) at = found.nextSibling;
        else into.insertBefore(found, at);
        if (typeof kid === 'string') {
            if (found.nodeValue !== kid) found.nodeValue = kid;
        } else {
            update(found as Element, kid);
        }
    }
    while (at) {
        const next: ChildNode | null = at.nextSibling;
        at.remove();
        at = next;
    }
}

function update(element: Element, to: Made): void {
    const was = kept.get(element);
    if (!was) return;
    for (const [name, value] of Object.entries(to.attrs)) {
        const before = was.made.attrs[name];
        if (value !== before || typeof value === 'function') set(element, was, name, value);
    }
    for (const name of Object.keys(was.made.attrs)) if (!(name in to.attrs)) set(element, was, name, null);
    children(element, to.kids);
    was.made = to;
}

function set(element: Element, was: Kept, name: string, value: Attrs[string]): void {
    if (name === 'key') return;
    if (name.startsWith('on')) {
        const event = name.slice('on'.length);
        if (!was.handlers.has(event)) element.addEventListener(event, (happened) => was.handlers.get(event)?.(happened));
        was.handlers.set(event, typeof value === 'function' ? value : () => undefined);
    } else if (name.startsWith('--')) {
        const { style } = element as HTMLElement;
        if (typeof value === 'string') style.setProperty(name, value);
        else style.removeProperty(name);
    } else if (name === 'value' && element instanceof HTMLInputElement) {
        element.value = typeof value === 'string' ? value : '';
    } else if (value === null || value === undefined || value === false || typeof value === 'function') {
        element.removeAttribute(name);
    } else {
        element.setAttribute(name, value === true ? '' : value);
    }
}
