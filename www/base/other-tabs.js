// Pages of the same learner that are open beside this one in the same browser. What one of them has handed in the others must know, or
// a worse result of theirs would be written over it.

/** A line to the other pages that use the same name; `heard(message)` for each of theirs. Without such a line nothing is heard. */
export function otherTabs(name, heard) {
  let channel = null;
  try {
    channel = new BroadcastChannel(name);
    channel.onmessage = ({ data }) => heard(data);
  } catch {
    // An old browser, or a sandbox.
  }
  return {
    tell(message) {
      try {
        channel?.postMessage(message);
      } catch {
        // Closed with the page.
      }
    },
  };
}

/** Does something while no other page does anything under that name, and gives its value. Without locks it is done at once. */
export async function alone(name, act) {
  let begun = false;
  const once = () => ((begun = true), act());
  try {
    return await navigator.locks.request(name, once);
  } catch (error) {
    if (begun) throw error;
    return act();
  }
}
