// What the form says, in English and French. Another language is one more entry with the same keys.

import bodyEnglish from "../page/texts/body.en.js";
import bodyFrench from "../page/texts/body.fr.js";

export const WORDS = {
  en: {
    body: bodyEnglish,
    title: "Measurements for {name}",
    lead: "Measure over thin clothing, with the tape neither tight nor loose, and with a helper where you can.",
    unit: "All lengths in {unit}. You may also write 31 1/2, or a unit of your own, such as 12 in.",
    range: "From {least} to {greatest} {unit}.",
    notNumber: "This is not a length. Write one such as {example}.",
    outOfRange: "{value} {unit} is not taken here; from {least} to {greatest} {unit} is.",
    between: "From {least} to {greatest} {unit} would do.",
    atLeast: "From {least} {unit} on would do.",
    atMost: "Up to {greatest} {unit} would do.",
    notSewn: "With this the sleeve cannot be made.",
    needed: "Please measure this too.",
    estimated: "Not measured: about {value} {unit}, from {low} to {high}. It is better to measure it.",
    unusual: "Please measure this again: with the other measurements, {low} to {high} {unit} is usual.",
    unusualAlone: "Please measure this again.",
    private: "What you enter is checked by the workroom’s service while you type. It is kept only when you order, by the workroom, and nowhere in this browser.",
    preview: "Your sleeve",
    sketch: "A sketch in your proportions, seen from the outer side.",
    empty: "Enter a first measurement, and your sleeve is sketched here.",
    fine: "These measurements go together.",
    doubtful: { one: "One measurement is unusual. You may order all the same: the workroom asks you before it cuts.", many: "{n} measurements are unusual. You may order all the same: the workroom asks you before it cuts." },
    toMend: { one: "One measurement needs another look.", many: "{n} measurements need another look." },
    noSleeve: "No sleeve can be made of these measurements together. Please take them again.",
    order: "Order this sleeve",
    ordering: "Sending your order …",
    taken: "Thank you, your order is taken.",
    held: "Thank you, your order is noted. Before anything is cut, the workroom asks you about: {list}.",
    number: "Order number {id}",
    another: "Order another",
    silent: "The workroom cannot be reached just now. Your measurements are still here; try again.",
    busy: "The workroom is busy just now. Your measurements are still here; try again in a moment.",
    shut: "This form is not set up: the workroom’s service refused it ({reason}).",
    noEase: "the style has no ease to make it to measure with",
    again: "Try again",
    worn: {
      picture: "Sketch of your arm from the outer side: the overlay stands over the shoulder and falls over the under-sleeve.",
      pictureBare: "Sketch of your arm from the outer side, with its sleeve.",
      overlay: "overlay",
      sleeve: "sleeve",
    },
    sewing: { front: "front", back: "back" },
  },
  fr: {
    body: bodyFrench,
    title: "Mesures pour {name}",
    lead: "Mesurez par-dessus un vêtement fin, sans serrer le ruban ni le laisser lâche, si possible avec quelqu’un.",
    unit: "Toutes les longueurs en {unit}. Vous pouvez aussi écrire 31 1/2, ou une autre unité, par exemple 12 in.",
    range: "De {least} à {greatest} {unit}.",
    notNumber: "Ce n’est pas une longueur. Écrivez par exemple {example}.",
    outOfRange: "{value} {unit} n’est pas accepté ici ; de {least} à {greatest} {unit} l’est.",
    between: "De {least} à {greatest} {unit} conviendrait.",
    atLeast: "À partir de {least} {unit} conviendrait.",
    atMost: "Jusqu’à {greatest} {unit} conviendrait.",
    notSewn: "Avec cette mesure, la manche ne peut pas être faite.",
    needed: "Prenez aussi cette mesure, s’il vous plaît.",
    estimated: "Non mesuré : environ {value} {unit}, de {low} à {high}. Mieux vaut le mesurer.",
    unusual: "Reprenez cette mesure : avec les autres, {low} à {high} {unit} est courant.",
    unusualAlone: "Reprenez cette mesure, s’il vous plaît.",
    private: "Ce que vous saisissez est vérifié par le service de l’atelier pendant la frappe. Seule la commande le conserve, à l’atelier, et rien ne reste dans ce navigateur.",
    preview: "Votre manche",
    sketch: "Un croquis à vos proportions, vu de l’extérieur du bras.",
    empty: "Saisissez une première mesure, et votre manche est esquissée ici.",
    fine: "Ces mesures vont ensemble.",
    doubtful: { one: "Une mesure est inhabituelle. Vous pouvez commander malgré tout : l’atelier vous demandera avant de couper.", many: "{n} mesures sont inhabituelles. Vous pouvez commander malgré tout : l’atelier vous demandera avant de couper." },
    toMend: { one: "Une mesure est à revoir.", many: "{n} mesures sont à revoir." },
    noSleeve: "Ces mesures ensemble ne permettent aucune manche. Reprenez-les, s’il vous plaît.",
    order: "Commander cette manche",
    ordering: "Votre commande part…",
    taken: "Merci, votre commande est prise.",
    held: "Merci, votre commande est notée. Avant de couper, l’atelier vous demandera : {list}.",
    number: "Commande numéro {id}",
    another: "Commander une autre manche",
    silent: "L’atelier ne répond pas pour le moment. Vos mesures sont toujours là ; réessayez.",
    busy: "L’atelier est occupé pour le moment. Vos mesures sont toujours là ; réessayez dans un instant.",
    shut: "Ce formulaire n’est pas en place : le service de l’atelier l’a refusé ({reason}).",
    noEase: "le modèle n’a pas d’aisance pour le sur-mesure",
    again: "Réessayer",
    worn: {
      picture: "Croquis de votre bras, vu de l’extérieur : la surmanche se dresse sur l’épaule et tombe sur la manche de dessous.",
      pictureBare: "Croquis de votre bras, vu de l’extérieur, avec sa manche.",
      overlay: "surmanche",
      sleeve: "manche",
    },
    sewing: { front: "devant", back: "dos" },
  },
};

/** A language tag as one that there are words in. */
export const spokenIn = (tag) => (WORDS[tag?.slice(0, 2).toLowerCase()] ? tag.slice(0, 2).toLowerCase() : "en");

export const find = (language, key) => key.split(".").reduce((at, step) => at[step], WORDS[language]);

const filled = (text, values) => text.replace(/\{(\w+)\}/g, (whole, name) => String(values?.[name] ?? whole));

export const say = (language, key, values) => filled(find(language, key), values);

export const count = (language, key, n) => filled(find(language, key)[n === 1 ? "one" : "many"], { n });
