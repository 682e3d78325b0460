/** The elements that show a planned day beside its list; the place of the days fetches them when it is painted. */
import './tb-day-lanes.js'
import './tb-day-loads.js'
import './tb-day-out.js'
