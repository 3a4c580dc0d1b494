// The page around a lesson: opens it in a frame, keeps its progress, takes its result. Copy and change it.
//
// `?player=https://downbeam.example.org/player.html` names the lesson's page, `?lesson=true-ap` the lesson there.

const asked = new URLSearchParams(location.search);
const player = new URL(asked.get('player') ?? '../../www/player.html', location.href);
const frame = document.getElementById('lesson');
const KEY = 'example.progress';

// The lesson speaks to this origin and to no other.
player.searchParams.set('host', location.origin);
if (asked.has('lesson')) player.hash = `open=${asked.get('lesson')}`;
if (asked.has('sandbox')) frame.setAttribute('sandbox', 'allow-scripts');

const answer = (message) => {
  // A sandboxed frame has no origin that could be named; only the frame itself can read what is posted to it.
  frame.contentWindow.postMessage({ source: 'downbeam-host', v: 1, ...message }, asked.has('sandbox') ? '*' : player.origin);
};

addEventListener('message', ({ source, origin, data }) => {
  if (source !== frame.contentWindow || origin !== (asked.has('sandbox') ? 'null' : player.origin)) return;
  if (data?.source !== 'downbeam' || data.v !== 1) return;
  if (data.type === 'ready') answer({ type: 'start', keeps: true, learner: asked.get('learner'), ...JSON.parse(localStorage.getItem(KEY)) });
  if (data.type === 'size') frame.style.height = `${data.height}px`;
  if (data.type === 'progress') {
    localStorage.setItem(KEY, JSON.stringify({ lines: data.lines, of: data.of }));
    document.getElementById('progress').textContent = `Actions done: ${data.lines.length}`;
  }
  if (data.type === 'result') {
    localStorage.removeItem(KEY);
    const { title, score, passed, receipt } = data.result;
    document.getElementById('result').textContent = `${title}: ${Math.round(100 * score)} of 100, ${passed ? 'passed' : 'not passed'}. The receipt has ${receipt.length} characters.`;
    // Store the receipt where you know who the learner is; say so only when it is stored.
    answer({ type: 'taken', id: data.id, accepted: true, said: 'Your course page has your receipt.' });
  }
});

frame.src = player.href;
