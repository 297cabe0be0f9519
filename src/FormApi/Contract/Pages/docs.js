// Shows the contract of the service that served this page.
window.SwaggerUIBundle({
  url: new URL("../openapi/v1.json", window.location.href).href,
  dom_id: "#contract",
  // Without the viewer's own bar: the page has a header.
  layout: "BaseLayout",
  presets: [window.SwaggerUIBundle.presets.apis],
  // No badge from a validator elsewhere.
  validatorUrl: null,
});
