// How each measurement of the body is named and taken, in English.

export default {
  upperArmGirth: ["Upper-arm girth", "Round the relaxed upper arm, half way from shoulder point to elbow, square to the arm."],
  armLength: ["Arm length", "From the shoulder point along the outside of the arm to the wrist bone."],
  elbowGirth: ["Elbow girth", "Round the straight arm at the point of the elbow."],
  wristGirth: ["Wrist girth", "Round the wrist over the wrist bone."],
  armscyeGirth: ["Armscye girth", "Over the shoulder point and through the armpit, where arm and trunk join."],
  handGirth: ["Hand girth", "Round the widest part of the flat hand, without the thumb. The lower edge must let it pass."],
  bustGirth: ["Bust girth", "Level round the trunk over the bust points; on men and boys the chest."],
  stature: ["Stature", "From the floor straight up to the top of the head, without shoes."],
  upperArmLength: ["Upper-arm length", "From the shoulder point along the outside of the arm to the elbow."],
  upperArmGirthFlexed: ["Upper-arm girth, tensed", "Round the tensed biceps with the elbow bent."],
  forearmGirthFlexed: ["Forearm girth, tensed", "Round the fullest part below the elbow, arm bent, fist clenched."],
  shoulderGirth: ["Shoulder girth", "Level round the body over both upper arms, a little below the shoulder points."],
  upperChestGirth: ["Upper-chest girth", "Round the trunk above the bust, close under the arms."],
  chestGirthSixthRib: ["Chest girth below the bust", "Level round the sixth rib after breathing out."],
  neckBaseGirth: ["Neck-base girth", "Round the neck where it meets the trunk."],
  waistGirth: ["Waist girth", "Level round the natural waist."],
  hipGirth: ["Hip girth", "Level round the fullest part of the seat."],
  scyeDepth: ["Scye depth", "Down the back, from the back neck point to the level of the armpit."],
};
