/** CSS pixels that a press may move and still be a click. */
const STEADY = 4;

export interface Drag {
  /** Both ends so far, pixels from the element's left edge; `isPan`: with Shift held. */
  moved(from: number, to: number, isPan: boolean): void;
  ended(from: number, to: number, isPan: boolean): void;
  clicked(at: number): void;
  /** Over the element without a press; null: it has left. */
  hovered(at: number | null): void;
  cancelled(): void;
}

/** Tells presses that move from clicks; a finger that scrolls the page up or down cancels. */
export function onDrag(element: HTMLElement, drag: Drag): void {
  let pressed: { readonly at: number; readonly isPan: boolean } | null = null;
  let isMoving = false;
  const xOf = (event: PointerEvent) => event.clientX - element.getBoundingClientRect().left;

  element.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    pressed = { at: xOf(event), isPan: event.shiftKey };
    isMoving = false;
  });
  element.addEventListener('pointermove', (event) => {
    const at = xOf(event);
    drag.hovered(at);
    if (pressed === null) return;
    if (!isMoving && Math.abs(at - pressed.at) > STEADY) {
      isMoving = true;
      // From here on the press belongs to this element wherever it goes.
      element.setPointerCapture(event.pointerId);
    }
    if (isMoving) drag.moved(pressed.at, at, pressed.isPan);
  });
  element.addEventListener('pointerup', (event) => {
    if (pressed === null) return;
    const { at, isPan } = pressed;
    pressed = null;
    if (isMoving) drag.ended(at, xOf(event), isPan);
    else drag.clicked(at);
    isMoving = false;
  });
  element.addEventListener('pointercancel', () => {
    pressed = null;
    isMoving = false;
    drag.cancelled();
  });
  element.addEventListener('pointerleave', () => {
    if (!isMoving) drag.hovered(null);
  });
}
