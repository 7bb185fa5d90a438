namespace Contam.Reports.Sheets;

/// <summary>
/// What the sheet does with the outcomes of its looks: sets of letters, as they stand in the page, and nothing else. It knows no engine.
/// </summary>
/// <remarks>A piece of <see cref="SheetScript"/>, within its function: it uses <c>all</c>, <c>at</c>, <c>words</c> and <c>boxes</c>, and gives <c>judge</c>.</remarks>
internal static class LookScript
{
    /// <summary>The piece.</summary>
    public const string Source = """

          // Looks
          var looks = all('.cs-look');
          var outcomes = all('.cs-outcome');
          var disproofs = all('.cs-disproof');
          function letters(element, name) { return words(element.getAttribute('data-' + name)); }
          function isIn(set) { return function (letter) { return set.indexOf(letter) !== -1; }; }
          function chosen(outcome) {
            return outcomes.filter(function (one) { return one.checked ? one.getAttribute('data-outcome') === outcome : false; }).map(function (one) { return one.getAttribute('data-look'); });
          }
          // Which looks count as found, which count as nothing found, and which are still open.
          function cameOut() {
            var found = chosen('found');
            var clean = chosen('clean');
            var against = [];
            disproofs.forEach(function (rule) {
              if (!letters(rule, 'found').every(isIn(found)) || !letters(rule, 'clean').every(isIn(clean))) return;
              against = against.concat(letters(rule, 'void').filter(isIn(clean)));
            });
            var counts = found.concat(against);
            var not = [];
            looks.forEach(function (look) {
              var letter = look.getAttribute('data-look');
              var due = letters(look, 'only-if');
              if (isIn(counts)(letter)) return;
              if (isIn(clean)(letter) || (due.length !== 0 ? due.every(isIn(not)) : false)) not.push(letter);
            });
            return { found: found, clean: clean, against: against, counts: counts, not: not };
          }
          function isOpen(now) { return function (letter) { return !isIn(now.counts)(letter) && !isIn(now.not)(letter); }; }
          // '' for what is done, 'struck' for what is not, else the letters that it still hangs on.
          function hangs(element, now) {
            var onlyIf = letters(element, 'only-if');
            var unless = letters(element, 'unless');
            if (unless.some(isIn(now.counts))) return 'struck';
            if (onlyIf.length !== 0 && !onlyIf.some(isIn(now.counts))) return onlyIf.every(isIn(now.not)) ? 'struck' : onlyIf.filter(isOpen(now)).join(' ');
            return unless.filter(isOpen(now)).join(' ');
          }
          function say(element, text) { var place = element.querySelector('.cs-state'); if (place) place.textContent = text; }
          function judge() {
            if (looks.length === 0) return { isStruck: function () { return false; }, hangsOn: function () { return ''; } };
            outcomes.forEach(function (one) {
              if (one.getAttribute('data-outcome') === 'open') one.checked = !outcomes.some(function (other) { return other !== one && other.name === one.name && other.checked; });
            });
            var now = cameOut();
            looks.forEach(function (look) {
              var letter = look.getAttribute('data-look');
              var how = isIn(now.found)(letter) ? 'Found.'
                : isIn(now.against)(letter) ? 'Was clean, but a find speaks against it: counts as found.'
                : isIn(now.clean)(letter) ? 'Clean.'
                : isIn(now.not)(letter) ? 'Struck: not made.'
                : letters(look, 'only-if').length === 0 || letters(look, 'only-if').some(isIn(now.counts)) ? 'Not made yet.' : 'Hangs on an earlier look.';
              say(look, how);
            });
            all('.cs-step, .cs-part, .cs-wanted').forEach(function (one) {
              var on = hangs(one, now);
              one.classList.toggle('cs-struck', on === 'struck');
              one.classList.toggle('cs-hangs', on !== '' && on !== 'struck');
              say(one, on === 'struck' ? 'struck' : on === '' ? '' : 'hangs on ' + on);
            });
            return {
              isStruck: function (box) { var step = box.closest('.cs-step'); return step ? step.classList.contains('cs-struck') : false; },
              hangsOn: function (box) { var step = box.closest('.cs-step'); return step && step.classList.contains('cs-hangs') ? hangs(step, now) : ''; }
            };
          }
          function hours(some) {
            var minutes = some.reduce(function (sum, box) { return sum + Number(box.getAttribute('data-minutes') || 0); }, 0);
            return String(Math.round(minutes / 6) / 10) + ' h';
          }
          function tellHours(steps, judged) {
            if (looks.length === 0) return;
            var left = steps.filter(function (box) { return !box.checked && !judged.isStruck(box); });
            var sure = left.filter(function (box) { return judged.hangsOn(box) === ''; });
            var struck = steps.filter(judged.isStruck);
            at('left').textContent = 'Left: ' + hours(sure) + (sure.length === left.length ? '.' : ', at most ' + hours(left) + ' as the open looks come out.')
              + (struck.length === 0 ? '' : ' Struck: ' + struck.length + (struck.length === 1 ? ' step, ' : ' steps, ') + hours(struck) + '.');
          }

        """;
}
