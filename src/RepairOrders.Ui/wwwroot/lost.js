// The connection's words. A cut is mended without a word from anybody; after a restart the page is opened again, and what was
// typed is offered by the forms.
// Times are shown in the zone of whoever reads them, where no site has one of its own.
window.zone = () => Intl.DateTimeFormat().resolvedOptions().timeZone;

const box = document.getElementById("components-reconnect-modal");
box.addEventListener("components-reconnect-state-changed", (event) => {
  if (event.detail.state === "rejected") location.reload();
  if (event.detail.state === "failed") again();
  if (event.detail.state === "hide") drafts.tell();
});

async function again() {
  for (;;) {
    await new Promise((done) => setTimeout(done, 2000));
    try {
      if (!(await Blazor.reconnect())) location.reload();
      return;
    } catch {
      // Still away.
    }
  }
}
