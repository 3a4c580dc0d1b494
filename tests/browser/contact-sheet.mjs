// Several screenshots on one: rows of named pictures.

/**
 * A PNG of `rows`, each a list of `[name, png]`, drawn by a page that shows nothing else; `scale` makes each picture smaller.
 */
export async function contactSheet(blank, rows, scale = 1) {
  const figure = ([name, png]) => `<figure style="margin:0"><figcaption>${name}</figcaption><img onload="this.width=this.naturalWidth*${scale}" src="data:image/png;base64,${png.toString('base64')}"></figure>`;
  const row = (pictures) => `<div style="display:flex;gap:8px">${pictures.map(figure).join('')}</div>`;
  await blank.setViewportSize({ width: 800, height: 600 });
  await blank.setContent(`<body style="margin:8px;font:16px sans-serif;background:#fff"><div id="sheet" style="display:grid;gap:16px;width:max-content">${rows.map(row).join('')}</div>`);
  return blank.locator('#sheet').screenshot();
}
