/**
 * Marks the page while it is on its way to the printer: paper is light whatever the screen is, and
 * pictures that are painted must be painted anew for it.
 */
export function onPrinting(): void {
  const root = document.documentElement;
  addEventListener('beforeprint', () => {
    root.dataset['printing'] = '';
  });
  addEventListener('afterprint', () => {
    delete root.dataset['printing'];
  });
}
