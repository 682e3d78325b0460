export { type RecipeLine, type RecipeRead, type RestOfRecipe, readRecipe } from './read-recipe.js'
export type { RecipeStep } from './recipe-method.js'
