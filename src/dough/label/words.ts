import { type Sentences, wording } from '../../engine/index.js'

/** What a baker has to know or to settle before a label is used. */
export type LabelDiagnostic =
  | {
      readonly code: 'labelBakeLossUnsaid' | 'labelWaterGone' | 'labelWaterNotCounted' | 'labelNothingWeighed'
    }
  | { readonly code: 'labelWeightUnknown'; readonly ingredient: string }
  | {
      readonly code: 'labelLinesUnsaid' | 'labelAllergensUnknown' | 'labelMadeOfUnsaid'
      readonly ingredients: readonly string[]
    }
  | { readonly code: 'labelStarterFlour'; readonly starter: string; readonly flour: string }
  | { readonly code: 'labelStarterFlourUnknown'; readonly starter: string }
  | { readonly code: 'labelToCheck'; readonly ingredient: string; readonly entry: string }
  | { readonly code: 'labelKindNotNamed'; readonly ingredient: string; readonly entry: string }
  | { readonly code: 'labelNutritionLacks'; readonly ingredients: readonly string[] }

export const labelSentences: Sentences<LabelDiagnostic> = {
  labelBakeLossUnsaid:
    'The loss in baking is not filled in. So water is listed as if all of it stayed in the bread, and there is no baked weight and no nutrition. Weigh a piece before and after baking, and fill in what it lost.',
  labelWaterGone:
    'Baking drives off more than all the water in the dough, so water is not in the list. Look at the loss in baking again.',
  labelWaterNotCounted:
    'Water is not in the list: the European Union counts as added water what the bread weighs beyond all its other ingredients, and here that is nothing.',
  labelNothingWeighed: 'Nothing of this formula has a weight yet.',
  labelWeightUnknown: ({ ingredient }) =>
    `What ${ingredient} weighs is not known, so there is no order. Correct its amount on the sheet.`,
  labelLinesUnsaid: ({ ingredients }) =>
    `Not in the list, because there is no amount: ${ingredients.join('; ')}.`,
  labelAllergensUnknown: ({ ingredients }) =>
    `Allergens are not filled in for ${ingredients.join('; ')}. Fill them in in the larder, from the label.`,
  labelMadeOfUnsaid: ({ ingredients }) =>
    `Bought, with ingredients of its own: ${ingredients.join('; ')}. Write in the larder what its label says it is made of, to stand in brackets.`,
  labelStarterFlour: ({ starter, flour }) =>
    `The flour in ${starter} is counted as ${flour}, as if it were fed with that.`,
  labelStarterFlourUnknown: ({ starter }) =>
    `It is not known which flour ${starter} is fed with. Write its flour out where it stands.`,
  labelToCheck: ({ ingredient, entry }) =>
    `${ingredient}: named to be on the careful side, the list says “${entry}”. Its own label says whether it is so.`,
  labelKindNotNamed: ({ ingredient, entry }) =>
    `${ingredient}: the list asks which of ${entry} it is. Write that into its name.`,
  labelNutritionLacks: ({ ingredients }) =>
    `No nutrition, because what is in it is not recorded: ${ingredients.join('; ')}. Write what its label says into the larder.`,
}

/** Something to settle before a label is used, with its sentence. */
export const labelNote = wording(labelSentences)
