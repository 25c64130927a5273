/**
 * Copies what an element says; where the browser does not let a page do so, marks it instead.
 * @returns whether it was copied
 */
export async function copyText(element: HTMLElement): Promise<boolean> {
  getSelection()?.selectAllChildren(element);
  try {
    await navigator.clipboard.writeText(element.textContent ?? '');
    return true;
  } catch {
    element.focus();
    return false;
  }
}
