// How much of a page's work is script, by what the browser writes down of its own tasks.

const categories = ["devtools.timeline", "disabled-by-default-devtools.timeline", "blink.user_timing"];

/** What the browser does for itself once script has changed a page: styles, layout, paint. */
const browsersOwn = new Set([
  ...["UpdateLayoutTree", "Layout", "PrePaint", "Paint", "PaintImage", "Layerize", "UpdateLayer", "Commit", "HitTest"],
  ...["CompositeLayers", "IntersectionObserverController::computeIntersections"],
]);

/**
 * Thread time of script between marks, in milliseconds: for each mark of a name, until the next one. Tasks are counted whole, without
 * what the browser does for itself; what runs between them, for whoever asks, is none of it.
 *
 * @param work sets the marks, by `performance.mark`
 */
export async function scriptBetween(page, mark, work) {
  await page.tracing.start({ categories });
  await work();
  const { traceEvents } = JSON.parse(Buffer.from(await page.tracing.stop()).toString());
  const marks = traceEvents.filter(({ name, cat }) => name === mark && cat.includes("blink.user_timing"));
  marks.sort((one, other) => one.ts - other.ts);
  return marks.map(({ pid, tid, ts: begin }, n) => {
    const end = marks[n + 1]?.ts ?? Infinity;
    const events = traceEvents
      .filter((one) => one.pid === pid && one.tid === tid && one.ph === "X" && one.tdur !== undefined)
      .filter(({ ts, dur }) => ts + dur > begin && ts + dur <= end)
      .sort((one, other) => one.ts - other.ts || other.dur - one.dur);
    let time = 0;
    /** Until when the browser is at what is its own. */
    let until = 0;
    for (const { name, ts, dur, tdur } of events)
      if (name === "RunTask") time += tdur;
      else if (browsersOwn.has(name) && ts >= until) {
        time -= tdur;
        until = ts + dur;
      }
    return time / 1000;
  });
}
