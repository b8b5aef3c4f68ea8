// What stands in the gallery: one example for each element, about the build of the article. Figures in braces are worked out as
// the page is made: {reduction of=front}.

/** By tag. */
export const exhibits = {
  "mw-build": `<mw-build id="plover" stages="Spur and pinion: 15 to 62" rear="Ring: 12 to 35" rear-wheel="120 mm"></mw-build>
<p>The motor turns <mw-value build="plover" of="rear">12.06</mw-value> times for one turn of Plover’s wheels.</p>`,
  "mw-teeth": `<p>With <mw-teeth of="primary.driver">{count of=primary.driver}</mw-teeth> teeth on the motor, the front wheels turn once for <mw-value of="front">{reduction of=front}</mw-value> turns of it.</p>`,
  "mw-value": `<p>The front axle is <mw-value figure="lead">{lead}</mw-value>.</p>`,
  "mw-quantity": `<p>Front tyres of <mw-quantity of="front.wheel.diameter">124 mm</mw-quantity> put it <mw-value figure="lead">{lead}</mw-value>.</p>`,
  "mw-ratio-summary": `<mw-ratio-summary><p>Front: {reduction of=front}. Rear: {reduction of=rear}.</p></mw-ratio-summary>`,
  "mw-overdrive-gauge": `<mw-overdrive-gauge><p>The front rolls {farther}.</p></mw-overdrive-gauge>`,
  "mw-edits": `<mw-edits></mw-edits>`,
  "mw-stage-editor": `<mw-stage-editor><p>Spur and pinion, gear row, ring and pinion, hubs.</p></mw-stage-editor>`,
  "mw-train-drawing": `<mw-train-drawing of="primary row"><p>Spur and pinion, and the gear row, drawn to scale.</p></mw-train-drawing>`,
  "mw-drive-line": `<mw-drive-line><p>From the motor to the wheels.</p></mw-drive-line>`,
  "mw-pair-finder": `<mw-pair-finder of="primary"><p>Pinions that fit.</p></mw-pair-finder>`,
  "mw-count-finder": `<mw-count-finder of="primary.driver" want="40"><p>A pinion for 40 motor turns.</p></mw-count-finder>`,
  "mw-train-finder": `<mw-train-finder><p>Trains that meet the range.</p></mw-train-finder>`,
  "mw-change-table": `<mw-change-table><p>As published, as you have it, and the alternatives.</p></mw-change-table>`,
  "mw-wheel-speed": `<mw-wheel-speed of="rear" unit="km/h"><p>Ideal speeds of the rear axle.</p></mw-wheel-speed>`,
  "mw-working": `<mw-working of="front"><p>The arithmetic of the front axle.</p></mw-working>`,
  "mw-order-list": `<mw-order-list from="nothing"><p>What there is to buy.</p></mw-order-list>`,
  "mw-parts-list": `<mw-parts-list><p>Every part.</p></mw-parts-list>`,
  "mw-bench-card": `<mw-bench-card><p>A card for the workshop.</p></mw-bench-card>`,
  "mw-measurements": `<mw-measurements><p>What was measured.</p></mw-measurements>`,
  "mw-unmarked-gear": `<mw-unmarked-gear><p>A gear without a mark.</p></mw-unmarked-gear>`,
  "mw-turn-count": `<mw-turn-count of="rear"><p>A box that nobody knows.</p></mw-turn-count>`,
};

/** An article's own first, then what goes deeper. */
export const order = Object.keys(exhibits);

/** What stands below an example where its build is another one than the article's. */
export const ownBuild = ["mw-build"];
