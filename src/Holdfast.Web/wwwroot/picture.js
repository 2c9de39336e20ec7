// The picture of a measurement: pieces of it as they are needed, zoom and pan, and points placed by pointer or by keys. Places are in pixels of the whole picture.
const side = 512;
const mostKept = 240;
const slack = 4;
const nearFirst = 9;
const wheelStep = 1.25;
const points = { bar: 2, line: 2, outline: Infinity, field: 2, "counted cell": 1 };

export function attach(frame, program, picture) {
  const canvas = frame.querySelector("canvas");
  const place = frame.parentElement.querySelector("[data-place]");
  const paint = canvas.getContext("2d");
  frame.style.aspectRatio = `${picture.width} / ${picture.height}`;
  const pieces = new Map();
  let view = null;
  let drawn = { tool: "line", marks: [], field: null, cells: null, counted: [], again: null };
  let begun = [];
  let at = null;
  let grip = null;
  let asked = false;
  let fitted = true;

  const redraw = () => {
    if (!asked) {
      asked = true;
      requestAnimationFrame(() => {
        asked = false;
        draw();
      });
    }
  };

  const whole = () => {
    const scale = Math.min(canvas.clientWidth / picture.width, canvas.clientHeight / picture.height);
    fitted = true;
    view = { scale, x: (picture.width - canvas.clientWidth / scale) / 2, y: (picture.height - canvas.clientHeight / scale) / 2 };
    redraw();
  };

  const zoom = (by, x = canvas.clientWidth / 2, y = canvas.clientHeight / 2) => {
    const least = Math.min(canvas.clientWidth / picture.width, canvas.clientHeight / picture.height) / 2;
    fitted = false;
    const scale = Math.min(32, Math.max(least, view.scale * by));
    view = { scale, x: view.x + x / view.scale - x / scale, y: view.y + y / view.scale - y / scale };
    redraw();
  };

  // Part of the picture stays in sight, whatever is done.
  const keepInSight = () => {
    const [w, h] = [canvas.clientWidth / view.scale, canvas.clientHeight / view.scale];
    view.x = Math.min(picture.width - w / 4, Math.max(-3 * w / 4, view.x));
    view.y = Math.min(picture.height - h / 4, Math.max(-3 * h / 4, view.y));
  };

  const piece = (level, column, row) => {
    const key = `${level}/${column}/${row}`;
    let found = pieces.get(key);
    if (found) {
      pieces.delete(key);
    } else {
      found = new Image();
      found.onload = redraw;
      found.src = `${picture.address}/${key}.png`;
    }
    pieces.set(key, found);
    if (pieces.size > mostKept) {
      pieces.delete(pieces.keys().next().value);
    }
    return found.complete && found.naturalWidth > 0 ? found : null;
  };

  const drawLevel = level => {
    const step = side * 2 ** level;
    const right = Math.min(picture.width, view.x + canvas.clientWidth / view.scale);
    const bottom = Math.min(picture.height, view.y + canvas.clientHeight / view.scale);
    for (let row = Math.floor(Math.max(0, view.y) / step); row * step < bottom; row++) {
      for (let column = Math.floor(Math.max(0, view.x) / step); column * step < right; column++) {
        const found = piece(level, column, row);
        if (found) {
          paint.drawImage(found, (column * step - view.x) * view.scale, (row * step - view.y) * view.scale, found.naturalWidth * 2 ** level * view.scale, found.naturalHeight * 2 ** level * view.scale);
        }
      }
    }
  };

  const onScreen = ([x, y]) => [(x - view.x) * view.scale, (y - view.y) * view.scale];

  // Light over dark: seen on any grey.
  const stroke = (path, dashed = false) => {
    paint.setLineDash(dashed ? [6, 4] : []);
    for (const [width, colour] of [[4, "#000"], [1.6, "#fff"]]) {
      paint.lineWidth = width;
      paint.strokeStyle = colour;
      paint.stroke(path);
    }
    paint.setLineDash([]);
  };

  const shape = (places, closed) => {
    const path = new Path2D();
    places.map(onScreen).forEach(([x, y], i) => i === 0 ? path.moveTo(x, y) : path.lineTo(x, y));
    if (closed) {
      path.closePath();
    }
    return path;
  };

  const ends = places => {
    const path = new Path2D();
    for (const [x, y] of places.map(onScreen)) {
      path.moveTo(x + 3, y);
      path.arc(x, y, 3, 0, 2 * Math.PI);
    }
    return path;
  };

  const write = (words, [x, y]) => {
    paint.font = "600 13px sans-serif";
    paint.lineWidth = 4;
    paint.strokeStyle = "#000";
    paint.fillStyle = "#fff";
    paint.lineJoin = "round";
    paint.strokeText(words, x + 6, y - 6);
    paint.fillText(words, x + 6, y - 6);
  };

  const box = ({ left, top, right, bottom }) => {
    const [x, y] = onScreen([left, top]);
    return [x, y, (right - left) * view.scale, (bottom - top) * view.scale];
  };

  // What is not counted is dimmed: the strip of text, the cells that are left out.
  const drawFrame = () => {
    const { field, cells } = drawn;
    if (!field) {
      return;
    }
    const open = new Path2D();
    open.rect(0, 0, canvas.clientWidth, canvas.clientHeight);
    const lines = new Path2D();
    lines.rect(...box(field));
    if (!cells || drawn.counted.length === 0) {
      open.rect(...box(field));
    }
    if (cells) {
      const [width, height] = [(field.right - field.left) / cells.across, (field.bottom - field.top) / cells.down];
      for (let i = 0; i < cells.across * cells.down; i++) {
        const [column, row] = [i % cells.across, Math.floor(i / cells.across)];
        const cell = { left: field.left + column * width, top: field.top + row * height, right: field.left + (column + 1) * width, bottom: field.top + (row + 1) * height };
        lines.rect(...box(cell));
        if (drawn.counted.includes(i + 1)) {
          open.rect(...box(cell));
        }
        const [x, y] = box(cell);
        write(String(i + 1), [x, y + 24]);
      }
    }
    paint.fillStyle = "rgb(0 0 0 / 45%)";
    paint.fill(open, "evenodd");
    stroke(lines, true);
  };

  const draw = () => {
    const [width, height] = [canvas.clientWidth, canvas.clientHeight];
    const ratio = devicePixelRatio || 1;
    if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
      canvas.width = Math.round(width * ratio);
      canvas.height = Math.round(height * ratio);
    }
    if (!view) {
      whole();
    }
    keepInSight();
    paint.setTransform(ratio, 0, 0, ratio, 0, 0);
    paint.fillStyle = "#444";
    paint.fillRect(0, 0, width, height);
    paint.imageSmoothingEnabled = view.scale < 2;
    const level = Math.max(0, Math.min(picture.levels - 1, Math.floor(Math.log2(1 / (view.scale * ratio)))));
    if (level !== picture.levels - 1) {
      drawLevel(picture.levels - 1);
    }
    drawLevel(level);
    drawFrame();
    for (const mark of drawn.marks) {
      if (mark.id === drawn.again) {
        continue;
      }
      stroke(shape(mark.places, mark.kind === "outline"), !mark.counted);
      stroke(ends(mark.places));
      write(mark.label, onScreen(mark.places[0]));
    }
    const again = drawn.marks.find(m => m.id === drawn.again);
    if (again) {
      const xs = again.places.map(p => p[0]);
      const ys = again.places.map(p => p[1]);
      const ring = new Path2D();
      const [x, y] = onScreen([(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]);
      ring.arc(x, y, (Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) * 0.8 + 6 / view.scale) * view.scale, 0, 2 * Math.PI);
      stroke(ring, true);
      write(`${again.label} again`, [x, y]);
    }
    if (begun.length > 0) {
      stroke(shape(at ? [...begun, at] : begun, false));
      stroke(ends(begun));
    }
    if (at && document.activeElement === frame) {
      const [x, y] = onScreen(at);
      const cross = new Path2D();
      for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
        cross.moveTo(x + dx * 3, y + dy * 3);
        cross.lineTo(x + dx * 16, y + dy * 16);
      }
      stroke(cross);
    }
    frame.dataset.scale = view.scale;
    frame.dataset.tool = drawn.tool;
    frame.dataset.left = view.x;
    frame.dataset.top = view.y;
    place.textContent = at ? `at ${at[0].toFixed(1)}, ${at[1].toFixed(1)} px; ${begun.length === 0 ? "nothing begun" : begun.length === 1 ? "one point placed" : `${begun.length} points placed`}` : "";
  };

  const finish = async () => {
    const sent = begun;
    begun = [];
    redraw();
    await program.invokeMethodAsync("Drawn", drawn.tool, sent.flat());
  };

  const add = async point => {
    begun.push([Math.min(picture.width, Math.max(0, point[0])), Math.min(picture.height, Math.max(0, point[1]))]);
    redraw();
    if (begun.length >= points[drawn.tool]) {
      await finish();
    }
  };

  const under = event => {
    const edge = canvas.getBoundingClientRect();
    return [view.x + (event.clientX - edge.left) / view.scale, view.y + (event.clientY - edge.top) / view.scale];
  };

  canvas.addEventListener("pointerdown", event => {
    if (event.button === 0) {
      grip = { x: event.clientX, y: event.clientY, view: { ...view }, moved: false };
      canvas.setPointerCapture(event.pointerId);
      frame.focus({ preventScroll: true });
    }
  });
  canvas.addEventListener("pointermove", event => {
    at = under(event);
    if (grip && (grip.moved || Math.hypot(event.clientX - grip.x, event.clientY - grip.y) > slack)) {
      grip.moved = true;
      fitted = false;
      view = { ...grip.view, x: grip.view.x - (event.clientX - grip.x) / view.scale, y: grip.view.y - (event.clientY - grip.y) / view.scale };
    }
    redraw();
  });
  canvas.addEventListener("pointerup", async event => {
    const held = grip;
    grip = null;
    if (!held || held.moved) {
      return;
    }
    const point = under(event);
    at = point;
    if (drawn.tool === "outline" && begun.length >= 3 && Math.hypot(point[0] - begun[0][0], point[1] - begun[0][1]) * view.scale < nearFirst) {
      await finish();
    } else {
      await add(point);
    }
  });
  canvas.addEventListener("pointercancel", () => { grip = null; });
  canvas.addEventListener("wheel", event => {
    // A page that is scrolled past is not caught; the picture in hand is.
    if (document.activeElement === frame) {
      event.preventDefault();
      const edge = canvas.getBoundingClientRect();
      zoom(event.deltaY < 0 ? wheelStep : 1 / wheelStep, event.clientX - edge.left, event.clientY - edge.top);
    }
  }, { passive: false });

  const follow = () => {
    const [x, y] = onScreen(at);
    const margin = 24;
    view.x += (Math.min(0, x - margin) + Math.max(0, x - canvas.clientWidth + margin)) / view.scale;
    view.y += (Math.min(0, y - margin) + Math.max(0, y - canvas.clientHeight + margin)) / view.scale;
  };

  frame.addEventListener("keydown", async event => {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const step = Math.max(1, Math.round(1 / view.scale)) * (event.shiftKey ? 10 : 1);
    const moves = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
    const middle = () => [Math.round(view.x + canvas.clientWidth / view.scale / 2), Math.round(view.y + canvas.clientHeight / view.scale / 2)];
    let known = true;
    if (moves[event.key]) {
      const from = at ?? middle();
      at = [Math.min(picture.width, Math.max(0, from[0] + moves[event.key][0])), Math.min(picture.height, Math.max(0, from[1] + moves[event.key][1]))];
      follow();
    } else if (event.key === " " || event.key === "Enter") {
      event.preventDefault();
      at ??= middle();
      if (event.key === "Enter" && drawn.tool === "outline" && begun.length >= 3) {
        await finish();
      } else {
        await add(at);
      }
    } else if (event.key === "Backspace") {
      begun.pop();
    } else if (event.key === "Escape" && begun.length > 0) {
      begun = [];
    } else if (event.key === "+" || event.key === "=") {
      zoom(wheelStep, ...(at ? onScreen(at) : []));
    } else if (event.key === "-") {
      zoom(1 / wheelStep, ...(at ? onScreen(at) : []));
    } else if (event.key === "0") {
      whole();
    } else {
      known = false;
    }
    if (known) {
      event.preventDefault();
      redraw();
    }
  });

  // What is drawn next is what was chosen last, also where the answer of a busy program is still under way.
  const chosen = event => {
    if (event.target.name === "picture-tool") {
      drawn = { ...drawn, tool: event.target.value, again: null };
      begun = [];
      redraw();
    }
  };
  frame.parentElement.addEventListener("change", chosen);
  frame.addEventListener("focus", redraw);
  frame.addEventListener("blur", redraw);
  const sized = new ResizeObserver(() => fitted ? whole() : redraw());
  sized.observe(canvas);
  redraw();

  return {
    update(next) {
      if (next.tool !== drawn.tool || next.again !== drawn.again) {
        begun = [];
      }
      const again = next.again !== drawn.again ? next.marks.find(m => m.id === next.again) : null;
      drawn = next;
      if (again) {
        const [x, y] = again.places[0];
        fitted = false;
        view = { ...view, x: x - canvas.clientWidth / view.scale / 2, y: y - canvas.clientHeight / view.scale / 2 };
      }
      redraw();
      frame.dataset.ready = "";
    },
    closer() { zoom(2); },
    wider() { zoom(0.5); },
    whole() { whole(); },
    dispose() {
      sized.disconnect();
      frame.parentElement?.removeEventListener("change", chosen);
    },
  };
}
