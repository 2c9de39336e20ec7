'use strict';
// Remarks pinned to places of this page. Nothing is sent anywhere: the remarks go into a file that the reader saves.
(() => {
  const about = JSON.parse(document.body.dataset.review);
  const by = id => document.getElementById(id);
  const pen = by('pen'), words = by('words'), quote = by('quote'), what = by('what'), list = by('list'), count = by('count'), reader = by('reader');
  const shelf = 'holdfast-review-' + about.fingerprint;
  const longest = 10000;
  let remarks = [], at = null, changing = -1, saved = true;

  const clean = text => text.replace(/\s+/g, ' ').trim().slice(0, longest);
  const kindOf = pin => pin.slice(0, pin.indexOf(':'));
  const targetOf = pin => pin.slice(pin.indexOf(':') + 1);
  const elementOf = remark => [...document.querySelectorAll('[data-pin]')].find(e => e.dataset.pin === remark.kind + ':' + remark.target);

  // What the browser can keep beside the page, it keeps; where it may not, the file alone counts.
  const shelve = () => { try { localStorage.setItem(shelf, JSON.stringify({ by: reader.value, remarks })); } catch { /* not allowed here */ } };
  const unshelve = () => { try { return JSON.parse(localStorage.getItem(shelf)); } catch { return null; } };

  function textOf(element) {
    if (kindOf(element.dataset.pin) === 'figure')
      return clean(element.querySelector('figcaption')?.textContent ?? '');
    return clean(element.textContent);
  }

  function sentencesOf(element) {
    const text = textOf(element);
    if (['number', 'figure'].includes(kindOf(element.dataset.pin)))
      return [text];
    const parts = typeof Intl.Segmenter === 'function' ? [...new Intl.Segmenter('en', { granularity: 'sentence' }).segment(text)].map(s => s.segment) : text.split(/(?<=\.)\s+(?=[A-Z])/);
    return parts.map(clean).filter(s => s.length > 0);
  }

  function open(element, chosen, index) {
    at = element;
    changing = index;
    const sentences = sentencesOf(element), all = textOf(element);
    const choices = [...new Set([...(chosen ? [chosen] : []), ...sentences, ...(sentences.length > 1 ? [all] : [])])];
    quote.replaceChildren(...choices.map(text => { const option = document.createElement('option'); option.textContent = text.length > 90 ? text.slice(0, 90) + '…' : text; option.value = text; return option; }));
    what.textContent = 'Pinned to a ' + kindOf(element.dataset.pin) + '.';
    words.value = index < 0 ? '' : remarks[index].words;
    pen.showModal();
    words.focus();
  }

  function show() {
    for (const element of document.querySelectorAll('.remarked'))
      element.classList.remove('remarked');
    list.replaceChildren(...remarks.map((remark, index) => {
      const item = document.createElement('li'), on = document.createElement('q'), said = document.createElement('p'), acts = document.createElement('p');
      on.textContent = remark.quote.length > 120 ? remark.quote.slice(0, 120) + '…' : remark.quote;
      said.textContent = remark.words;
      const element = elementOf(remark);
      element?.classList.add('remarked');
      for (const [name, act] of [['Change', () => element && open(element, remark.quote, index)], ['Remove', () => { remarks.splice(index, 1); changed(); }], ['Show', () => { element?.scrollIntoView({ block: 'center' }); element?.focus(); }]]) {
        const button = document.createElement('button');
        button.type = 'button';
        button.textContent = name;
        button.setAttribute('aria-label', name + ' remark ' + (index + 1));
        button.addEventListener('click', act);
        acts.append(button, ' ');
      }
      item.append(on, said, acts);
      return item;
    }));
    count.textContent = remarks.length === 0 ? 'No remark yet.' : remarks.length + (remarks.length === 1 ? ' remark' : ' remarks') + (saved ? ', saved.' : ', not saved as a file yet.');
  }

  function changed() {
    saved = false;
    shelve();
    show();
  }

  const pinned = event => event.target.closest?.('[data-pin]');
  document.addEventListener('click', event => {
    const element = pinned(event);
    if (!element || event.target.closest('a, summary, details, button'))
      return;
    const selection = getSelection(), selected = clean(selection.toString());
    if (selected && element.contains(selection.anchorNode) && element.contains(selection.focusNode)) {
      open(element, selected, -1);
      return;
    }
    let chosen = null;
    const range = document.caretRangeFromPoint?.(event.clientX, event.clientY);
    if (range && element.contains(range.startContainer)) {
      const before = document.createRange();
      before.setStart(element, 0);
      before.setEnd(range.startContainer, range.startOffset);
      let length = clean(before.toString()).length;
      for (const sentence of sentencesOf(element)) {
        chosen = sentence;
        length -= sentence.length + 1;
        if (length <= 0)
          break;
      }
    }
    open(element, chosen, -1);
  });
  document.addEventListener('keydown', event => {
    const element = pinned(event);
    if (event.key === 'Enter' && element === event.target) {
      event.preventDefault();
      open(element, null, -1);
    }
  });

  by('keep').addEventListener('click', () => {
    const said = words.value.trim();
    if (!said) {
      what.textContent = 'Write your remark first.';
      words.focus();
      return;
    }
    const remark = { kind: kindOf(at.dataset.pin), target: targetOf(at.dataset.pin), quote: quote.value, words: said, made: new Date().toISOString() };
    if (changing < 0)
      remarks.push(remark);
    else
      remarks[changing] = remark;
    pen.close();
    changed();
    at.focus();
  });
  by('leave').addEventListener('click', () => { pen.close(); at?.focus(); });

  by('save').addEventListener('click', () => {
    if (remarks.length === 0) {
      count.textContent = 'There is no remark to save yet.';
      return;
    }
    if (!reader.value.trim()) {
      count.textContent = 'Type your name first: the author will see whose remarks they are.';
      reader.focus();
      return;
    }
    const file = JSON.stringify({ schema: about.schema, study: about.study, entry: about.entry, fingerprint: about.fingerprint, by: clean(reader.value), remarks }, null, 1) + '\n';
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([file], { type: 'application/json' }));
    link.download = 'remarks-' + about.fingerprint.slice(0, 8) + '-' + clean(reader.value).toLowerCase().replace(/[^a-z0-9]+/g, '-') + '.json';
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    saved = true;
    show();
  });
  by('again').addEventListener('change', async event => {
    try {
      const file = JSON.parse(await event.target.files[0].text());
      if (file.schema !== about.schema || file.fingerprint !== about.fingerprint || !Array.isArray(file.remarks))
        throw new Error('another study');
      remarks = file.remarks.map(r => ({ kind: String(r.kind), target: String(r.target), quote: String(r.quote), words: String(r.words), made: String(r.made) }));
      reader.value = String(file.by ?? '');
      changed();
    } catch {
      count.textContent = 'That file holds no remarks on this copy of the study.';
    }
  });
  reader.addEventListener('input', shelve);
  addEventListener('beforeunload', event => { if (!saved) event.preventDefault(); });

  const kept = unshelve();
  if (kept && Array.isArray(kept.remarks) && kept.remarks.length > 0) {
    remarks = kept.remarks;
    reader.value = kept.by ?? '';
    saved = false;
  }
  show();
})();
