// What a shop does with an order: it notes the number. No measurement passes through its hands.
document.addEventListener("sleeve-order", ({ detail }) => {
  const line = document.createElement("li");
  line.textContent = `Sleeves made to measure, order ${detail.id} (${detail.state})`;
  document.getElementById("basket").append(line);
  document.getElementById("basket-empty").hidden = true;
});
