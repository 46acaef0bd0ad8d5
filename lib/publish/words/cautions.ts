/** The usual cautions of the trade. They stand on the sheets where the hand is. */
export const tradeCautions = {
  authority:
    'Instructions of the vehicle maker and of the device makers, and local codes, come before this sheet. Leave work that asks for a licence to those who hold one.',
  battery:
    'Take the negative lead off every battery before you touch a conductor of the feed. Wait as long as the vehicle maker says.',
  restraints:
    'Never splice, tap or probe restraint wiring. Keep wires, screws and boards out of the path of every airbag and belt.',
  voltage: 'Orange cable is not touched. In a hybrid or electric vehicle, work on the 12 V side only.',
  drilling:
    'Before each hole, look and feel behind the panel: tanks, fuel and brake lines, wiring, airbags. Set a depth stop.',
  firstPower:
    'First power goes through a limited supply, never from a car battery, with the main fuses out and the positive shown open to ground.',
  hearing:
    'NIOSH recommends at most 8 hours at 85 dBA; each 3 dB more halves the time. Protect your hearing while testing.',
} as const;
export type TradeCaution = keyof typeof tradeCautions;
