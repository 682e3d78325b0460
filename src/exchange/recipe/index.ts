export { type RecipeLine, type RecipeRead, type RestOfRecipe, readRecipe } from './read-recipe.js'
