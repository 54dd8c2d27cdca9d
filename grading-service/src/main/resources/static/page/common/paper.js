// What a PDF is made for, as it is chosen in a list, and as a request says it.

/** The paper of a choice: a format by its name, and for the projector the ground that its lines stand on. */
export const paperOf = (choice) => (choice.startsWith("projector") ? { format: "projector", ground: choice === "projector" ? "dark" : "light" } : { format: choice });
