/** How a row of a formula's note begins that tells of a line whose guess nobody has confirmed: it is nothing to do. */
export const notConfirmed = 'Not confirmed in '
