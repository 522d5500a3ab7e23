import { Piano } from "./piano";
import { Playing } from "./playing";

/** Plays on the recorded piano of the page. */
export class Player extends Playing<Piano> {
  constructor() {
    super(new Piano());
  }
}
