namespace Contam.Reports.Sheets;

/// <summary>What the sheet does where a script may run: keeps ticks on the device, filters, lights ways. It writes text only, never markup.</summary>
internal static class SheetScript
{
    /// <summary>The script.</summary>
    public const string Source = Start + LookScript.Source + Rest;

    private const string Start = """

        (function () {
          'use strict';
          function all(what, within) { return Array.prototype.slice.call((within || document).querySelectorAll(what)); }
          function at(id) { return document.getElementById(id); }
          function words(text) { return (text || '').split(' ').filter(Boolean); }
          function show(element) { if (element) element.hidden = false; }

          // Ticks
          var key = 'contam-sheet/' + at('sheet').getAttribute('data-plan');
          var boxes = all('.cs-tick');
          var steps = all('.cs-done');
          var keeps = true;

        """;

    private const string Rest = """

          function read() {
            var ticked = [];
            try { ticked = JSON.parse(localStorage.getItem(key) || '[]'); } catch (fault) { keeps = false; }
            if (!Array.isArray(ticked)) ticked = [];
            boxes.forEach(function (box) { box.checked = ticked.indexOf(box.id) !== -1; });
          }
          function keep() {
            try { localStorage.setItem(key, JSON.stringify(boxes.filter(function (box) { return box.checked; }).map(function (box) { return box.id; }))); } catch (fault) { keeps = false; }
          }
          function tell(early) {
            var judged = judge();
            var due = steps.filter(function (box) { return !judged.isStruck(box); });
            var done = due.filter(function (box) { return box.checked; }).length;
            tellHours(steps, judged);
            at('progress').textContent = done + ' of ' + due.length + ' steps ticked' + (due.length === steps.length ? '. ' : ', ' + (steps.length - due.length) + ' struck. ')
              + (keeps ? 'Ticks are kept on this device alone.' : 'This browser keeps nothing; print the sheet before you close it.') + (early || '');
          }
          function early(box) {
            var judged = judge();
            if (box.checked && judged.hangsOn(box) !== '') return ' Step ' + box.id.slice(5) + ' hangs on look ' + judged.hangsOn(box) + ', which has not come out yet.';
            var open = box.checked ? words(box.getAttribute('data-after')).filter(function (number) { var before = at('tick-' + number); return before ? !before.checked && !judged.isStruck(before) : false; }) : [];
            return open.length === 0 ? '' : ' Step ' + box.id.slice(5) + ' comes after ' + open.join(', ') + ', not ticked yet.';
          }
          boxes.concat(outcomes.filter(function (one) { return boxes.indexOf(one) === -1; })).forEach(function (box) {
            box.addEventListener('change', function () { keep(); tell(box.type === 'radio' ? '' : early(box)); });
          });
          at('untick').addEventListener('click', function () {
            if (!window.confirm(looks.length === 0 ? 'Untick every step and every order line of this sheet?' : 'Untick every step and every order line, and take back every look of this sheet?')) return;
            boxes.forEach(function (box) { box.checked = false; });
            keep();
            tell();
          });
          window.addEventListener('storage', function (event) { if (event.key === key) { read(); tell(); } });
          window.addEventListener('pageshow', function () { read(); tell(); });
          read();
          tell();

          // What is folded prints folded, so all of it can be unfolded at once.
          at('unfold').addEventListener('click', function () {
            var open = this.getAttribute('aria-pressed') !== 'true';
            this.setAttribute('aria-pressed', String(open));
            all('details').forEach(function (one) { one.open = open; });
          });

          // Filters
          var byCircuit = at('by-circuit');
          var byPerson = at('by-person');
          function filter() {
            var circuit = byCircuit.value;
            var person = byPerson ? byPerson.value : '';
            var shown = 0;
            var steps = all('.cs-step');
            steps.forEach(function (step) {
              var circuits = words(step.getAttribute('data-circuits'));
              var who = step.getAttribute('data-person');
              var fits = (circuit === '' || circuits.length === 0 || circuits.indexOf(circuit) !== -1) ? (person === '' || who === '' || who === person) : false;
              step.hidden = !fits;
              shown += fits ? all('.cs-done', step).length : 0;
            });
            all('.cs-part').forEach(function (part) { part.hidden = circuit !== '' ? words(part.getAttribute('data-circuits')).indexOf(circuit) === -1 : false; });
            all('.cs-phase').forEach(function (phase) { phase.hidden = all('.cs-step', phase).every(function (step) { return step.hidden; }); });
            var some = circuit !== '' || person !== '';
            document.body.classList.toggle('cs-filtered', some);
            at('filtered').textContent = some ? 'Shown: ' + [byCircuit, byPerson].filter(function (one) { return one ? one.value !== '' : false; }).map(function (one) { return one.options[one.selectedIndex].text; }).join(', ')
              + '. ' + shown + ' of ' + boxes.filter(function (box) { return box.classList.contains('cs-done'); }).length + ' steps; the others must be done too.' : '';
          }
          [byCircuit, byPerson].forEach(function (choice) { if (choice) choice.addEventListener('change', filter); });
          filter();

          // Ways in the picture
          var picture = at('circuits');
          var drawn = all('[data-part]', picture);
          var lines = all('[data-from]', picture);
          function has(element, name, id) { return words(element.getAttribute(name)).indexOf(id) !== -1; }
          function dark() {
            all('.cs-lit, .cd-lit').forEach(function (one) { one.classList.remove('cs-lit', 'cd-lit'); });
            drawn.forEach(function (box) { box.setAttribute('aria-pressed', 'false'); });
            at('lit').textContent = '';
            at('unlight').hidden = true;
          }
          function light(ids) {
            dark();
            var told = [];
            ids.forEach(function (id) {
              var row = at('part-' + id);
              if (!row) return;
              row.classList.add('cs-lit');
              told.push(row.querySelector('th').textContent);
              all('.cs-way', row).forEach(function (list) {
                words(list.getAttribute('data-way')).forEach(function (here, place, way) {
                  drawn.forEach(function (box) { if (has(box, 'data-part', here)) box.classList.add('cd-lit'); });
                  if (place === 0) return;
                  lines.forEach(function (line) { if (has(line, 'data-from', way[place - 1]) ? has(line, 'data-to', here) : false) line.classList.add('cd-lit'); });
                });
              });
            });
            drawn.forEach(function (box) { if (ids.some(function (id) { return has(box, 'data-part', id); })) box.setAttribute('aria-pressed', 'true'); });
            at('lit').textContent = 'Lit: the way to ' + told.join(', ') + '.';
            show(at('unlight'));
          }
          drawn.forEach(function (box) {
            var ids = words(box.getAttribute('data-part'));
            function press() { if (box.getAttribute('aria-pressed') === 'true') dark(); else light(ids); }
            box.setAttribute('tabindex', '0');
            box.setAttribute('role', 'button');
            box.setAttribute('aria-pressed', 'false');
            box.addEventListener('click', press);
            box.addEventListener('keydown', function (event) {
              if (event.key !== 'Enter' ? event.key !== ' ' : false) return;
              event.preventDefault();
              press();
            });
          });
          all('.cs-show').forEach(function (button) {
            show(button);
            button.addEventListener('click', function () {
              var id = button.closest('.cs-part').getAttribute('data-part');
              light([id]);
              var box = drawn.filter(function (one) { return has(one, 'data-part', id); })[0];
              if (!box) return;
              box.scrollIntoView({ block: 'center', inline: 'center' });
              box.focus({ preventScroll: true });
            });
          });
          at('unlight').addEventListener('click', function () { dark(); at('view').focus(); });
          // A wide picture is seen from where it begins.
          function bringIntoSight(box) {
            var view = at('view');
            var here = box.getBoundingClientRect();
            var frame = view.getBoundingClientRect();
            view.scrollLeft += here.left - frame.left - (frame.width - here.width) / 2;
            view.scrollTop += here.top - frame.top - (frame.height - here.height) / 2;
          }
          function begin() { var failed = picture.querySelector('.cd-failed') || drawn[0]; if (failed) bringIntoSight(failed); }
          at('whole').addEventListener('click', function () {
            this.setAttribute('aria-pressed', String(at('view').classList.toggle('cs-whole')));
            begin();
          });
          picture.setAttribute('role', 'group');
          picture.setAttribute('aria-label', 'circuits');
          all('.cs-open').forEach(show);
          show(at('tools'));
          show(at('how-to-light'));
          show(document.querySelector('.cs-lights'));
          begin();
        })();

        """;
}
