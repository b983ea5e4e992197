// Where a reader is after a screen was drawn, and what a keyboard has for a pad.

/** Another screen begins at its top, and is where a reader reads on. */
export function begins(into: HTMLElement): void {
    window.scrollTo(0, 0);
    for (const scrolls of into.querySelectorAll('.column, .upper, .second, .panel')) scrolls.scrollTop = 0;
    const panel = into.querySelector<HTMLElement>('[data-focus]');
    (panel ?? into.querySelector<HTMLElement>('h1'))?.focus({ preventScroll: true });
    into.querySelector('.week.current')?.scrollIntoView({ block: 'start' });
}

/** The row that has what is in hand. */
export function row(): string | undefined {
    return document.activeElement?.closest<HTMLElement>('[data-row]')?.dataset['row'];
}

/** What was in hand went: its row still is, or the page's title. */
export function returnsTo(into: HTMLElement, row: string): void {
    const there = [...into.querySelectorAll<HTMLElement>('[data-row]')].find((one) => one.dataset['row'] === row);
    (there?.querySelector<HTMLElement>('button, input') ?? into.querySelector<HTMLElement>('h1'))?.focus();
}

/** A pad is typed on with what keyboards have for it. */
export function typesOnPad(into: HTMLElement, event: KeyboardEvent): void {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.key === 'Backspace' ? 'rub-out' : `digit-${event.key}`;
    const found = [...into.querySelectorAll<HTMLElement>('.panel [data-key]')].find((one) => one.dataset['key'] === key);
    found?.click();
}
