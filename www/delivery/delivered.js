// Whether this page was brought by a place outside it: a package says so, a launch or a naming of the page around is in the address.

/** Then the delivery is connected as the page opens, and not only when the learner opens a lesson. */
export function isDelivered() {
  const query = new URLSearchParams(location.search);
  const framed = window.parent !== window;
  return document.querySelector('meta[name="downbeam-delivery"]') !== null || query.has('endpoint') || (framed && query.has('host'));
}
