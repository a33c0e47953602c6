import {
  IRenderManagerService,
  Layer,
  type Engine,
  type IRender,
} from '@univerjs/preset-sheets-core';
import type { Injector } from '@univerjs/presets';

/**
 * Lets the grid's canvases rest while there is nothing to draw: its engine asks for every frame of the
 * screen, though a scene draws only when one of its layers is dirty, and a layer becomes so by `makeDirty`
 * alone. So that call wakes the canvas, and a frame that leaves nothing to draw is the last.
 */
export function restDrawing(injector: Injector): void {
  const renders = injector.get(IRenderManagerService);
  const wakes = new WeakMap<Engine, () => void>();
  const follow = ({ engine, scene, activated$ }: IRender) => {
    let isActive = false;
    const draw = () => {
      scene.render();
    };
    wakes.set(engine, () => {
      if (isActive) engine.runRenderLoop(draw);
    });
    activated$.subscribe((active) => {
      isActive = active;
      if (!active) engine.stopRenderLoop();
    });
    engine.endFrame$.subscribe(() => {
      if (!scene.isDirty()) engine.stopRenderLoop();
    });
  };
  renders.getRenderAll().forEach(follow);
  renders.created$.subscribe(follow);
  wakeWhenDirty((engine) => wakes.get(engine)?.());
}

function wakeWhenDirty(wake: (engine: Engine) => void): void {
  const layers = Layer.prototype;
  const { makeDirty } = layers;
  layers.makeDirty = function (this: Layer, state = true) {
    makeDirty.call(this, state);
    const engine = state ? this.scene.getEngine() : null;
    if (engine) wake(engine as Engine);
    return this;
  };
  const soon = dirtySoon();
  layers.makeDirtyWithDebounce = function (this: Layer, state = true) {
    soon(this, state);
  };
}

/** Makes layers dirty after what runs now, all in one channel: the engine opens one each time and closes none. */
function dirtySoon(): (layer: Layer, state: boolean) => void {
  const due = new Map<Layer, boolean>();
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    const now = [...due];
    due.clear();
    for (const [layer, state] of now) layer.makeDirty(state);
  };
  return (layer, state) => {
    if (due.size === 0) port2.postMessage(null);
    due.set(layer, state);
  };
}
