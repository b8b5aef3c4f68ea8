// Vue 3: say which tags are custom elements, and use them as they are.
const app = Vue.createApp({
  data: () => ({ drawn: 0, changes: 0 }),
  template: `
    <article>
      <mw-build
        id="limpet"
        stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45"
        front="Ring: 13 to 38; Hub: 15 to 22"
        rear="Ring: 12 to 35; Hub: 16 to 23"
      ></mw-build>
      <p class="sentence">
        With <mw-teeth of="spur-and-pinion.driver" @mw-change="changes++">15</mw-teeth> teeth the front turns once for every
        <mw-value of="front">44.30</mw-value> turns of the motor.
      </p>
      <p>
        Changes: <output id="changes">{{ changes }}</output>
        <button id="again" @click="drawn++">Drawn {{ drawn }} times</button>
      </p>
    </article>`,
});
app.config.compilerOptions.isCustomElement = (tag) => tag.startsWith("mw-");
app.mount("#app");
