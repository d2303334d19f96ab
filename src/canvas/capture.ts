/** Keeps a pressed pointer's events coming to an element, wherever it goes. */
export function capturePointer(element: Element, pointerId: number): void {
  try {
    element.setPointerCapture(pointerId);
  } catch {
    // The pointer is gone already (or was made by a script): its events still come while it is over the element.
  }
}
