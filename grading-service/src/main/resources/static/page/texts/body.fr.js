// How each measurement of the body is named and taken, in French.

export default {
  upperArmGirth: ["Tour de bras", "Autour du bras relâché, à mi-chemin entre le point d’épaule et le coude, perpendiculairement au bras."],
  armLength: ["Longueur de bras", "Du point d’épaule, le long de l’extérieur du bras, jusqu’à l’os du poignet."],
  elbowGirth: ["Tour de coude", "Autour du bras tendu, à la pointe du coude."],
  wristGirth: ["Tour de poignet", "Autour du poignet, sur l’os."],
  armscyeGirth: ["Tour d’articulation du bras", "Par-dessus le point d’épaule et sous l’aisselle, là où le bras rejoint le buste."],
  handGirth: ["Tour de main", "Autour de la partie la plus large de la main à plat, sans le pouce. Le bas doit la laisser passer."],
  bustGirth: ["Tour de poitrine", "À l’horizontale, sur la pointe des seins ; chez l’homme et le garçon, le thorax."],
  stature: ["Stature", "Du sol au sommet de la tête, sans chaussures."],
  upperArmLength: ["Longueur du haut du bras", "Du point d’épaule, le long de l’extérieur du bras, jusqu’au coude."],
  upperArmGirthFlexed: ["Tour de bras contracté", "Autour du biceps contracté, coude plié."],
  forearmGirthFlexed: ["Tour d’avant-bras contracté", "Au plus fort sous le coude, bras plié, poing fermé."],
  shoulderGirth: ["Tour d’épaules", "À l’horizontale, autour du corps et des deux bras, un peu sous les points d’épaule."],
  upperChestGirth: ["Tour de haut de poitrine", "Autour du buste au-dessus de la poitrine, juste sous les bras."],
  chestGirthSixthRib: ["Tour de thorax sous la poitrine", "À l’horizontale, à la sixième côte, après expiration."],
  neckBaseGirth: ["Tour de base du cou", "Autour du cou, là où il rejoint le buste."],
  waistGirth: ["Tour de taille", "À l’horizontale, à la taille naturelle."],
  hipGirth: ["Tour de hanches", "À l’horizontale, au plus fort des fesses."],
  scyeDepth: ["Profondeur d’emmanchure", "Dans le dos, de la base du cou au niveau de l’aisselle."],
};
