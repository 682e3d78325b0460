export type { RecipeStep } from '../steps/recipe-method.js'
export { type RecipeLine, type RecipeRead, type RestOfRecipe, readRecipe } from './read-recipe.js'
