/**
 * Put into a page before it is timed: the time of one step of a hand. Its handlers and what they queue, and the next
 * frame's drawing; waiting for the screen's tick is left out. And waits for an edit's earth, and for all of its results, to be drawn.
 *
 * @param {import("@playwright/test").Page} page
 */
export function bringTimeStep(page) {
  return page.addInitScript(() => {
    const until = async (mark) => {
      const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      do await frame();
      while (document.querySelector('[data-testid="plan"]')?.getAttribute(mark) !== "true");
      await frame();
    };
    window.untilSettled = () => until("data-settled");
    window.untilEarthFine = () => until("data-earth-fine");
    window.timeStep = (act) =>
      new Promise((done) => {
        let frameStart = 0;
        requestAnimationFrame(() => {
          frameStart = performance.now();
        });
        const start = performance.now();
        act();
        queueMicrotask(() =>
          queueMicrotask(() => {
            const handled = performance.now() - start;
            requestAnimationFrame(() => {
              const drawn = performance.now() - frameStart;
              setTimeout(() => done(handled + drawn));
            });
          }),
        );
      });
  });
}
