// A SCORM 2004 platform that sequences by the standard and not by us: scorm-again (npm, MIT) holds the activity tree, decides what is delivered, and rolls
// results up. This page only reads the manifest into the tree's settings and shows what is delivered in a frame, as a platform does.

import { html } from './hosts.mjs';

/**
 * The host's page of the package under `/course/`. In it: `delivered` (identifiers in their order), `navigate(request, target)` (ends what is open, then asks
 * the engine; resolves to whether it was allowed), `tracked(id)`, `said` (errors of sequencing).
 */
export const sequencedHost = () =>
  html(`
    <script src="/scorm-again/scorm2004.js"></script>
    <iframe id="lesson" width="1000" height="700"></iframe>
    <script type="module">
      const xml = new DOMParser().parseFromString(await (await fetch('/course/imsmanifest.xml')).text(), 'application/xml');
      const all = (name, within = xml) => [...within.getElementsByTagNameNS('*', name)];
      const child = (element, name) => [...element.children].find((one) => one.localName === name);
      const yes = (element, name) => element?.getAttribute(name) === 'true';
      const pages = Object.fromEntries(all('resource').map((r) => [r.getAttribute('identifier'), r.getAttribute('href')]));
      const shows = {};
      /** The settings of an activity out of its element, as far as the package uses the standard. */
      function activity(element) {
        const [id, sequencing] = [element.getAttribute('identifier'), child(element, 'sequencing')];
        shows[id] = pages[element.getAttribute('identifierref')];
        const settings = { id, title: child(element, 'title').textContent, children: [...element.children].filter((one) => one.localName === 'item').map(activity) };
        const mode = sequencing && child(sequencing, 'controlMode');
        if (mode) settings.sequencingControls = { choice: yes(mode, 'choice'), flow: yes(mode, 'flow') };
        const objectives = sequencing && child(sequencing, 'objectives');
        const primary = objectives && child(objectives, 'primaryObjective');
        if (primary) settings.primaryObjective = { objectiveID: primary.getAttribute('objectiveID'), isPrimary: true, satisfiedByMeasure: yes(primary, 'satisfiedByMeasure'), minNormalizedMeasure: Number(child(primary, 'minNormalizedMeasure').textContent) };
        const controls = sequencing && child(sequencing, 'deliveryControls');
        if (controls) settings.deliveryControls = { tracked: true, completionSetByContent: yes(controls, 'completionSetByContent'), objectiveSetByContent: yes(controls, 'objectiveSetByContent') };
        return settings;
      }
      const api = new Scorm2004API({ autocommit: false, logLevel: 5, sequencing: { activityTree: activity(all('organization')[0]) } });
      globalThis.API_1484_11 = api;
      globalThis.delivered = [];
      globalThis.said = [];
      const frame = document.getElementById('lesson');
      api.setSequencingEventListeners({
        onSequencingError: (error, where) => said.push(String(error) + ' ' + String(where ?? '')),
        onActivityDelivery: (found) => {
          delivered.push(found.id);
          api.cmi.learner_id = 'jdoe@example.org';
          frame.src = '/course/' + shows[found.id];
        },
      });
      globalThis.navigate = async (request, target) => {
        if (delivered.length > 0) {
          frame.src = 'about:blank';
          await new Promise((done) => frame.addEventListener('load', done, { once: true }));
          api.reset();
        }
        return api.processNavigationRequest(request, target);
      };
      globalThis.tracked = (id) => api.getActivityTrackingData(id);
      globalThis.tree = () => Object.keys(shows);
      globalThis.ready = true;
    </script>`);
