// The journeys that every engine takes: one description for all of them.
import { say as words } from "../say.js";

/** The app's words on the way, in one place. */
export const say = {
  couples: words.screens.COUPLES,
  newCouple: words.screens.NEW_COUPLE,
  firstName: words.screens.FIRST_NAME,
  secondName: words.screens.SECOND_NAME,
  save: words.screens.SAVE,
  sizeRead: words.screens.READ_SIZE,
  addReading: words.screens.ADD_READING,
  width: words.screens.BAND_WIDTH,
  profile: words.screens.PROFILE,
  flat: "flat",
  back: "Back: Tess & Rowan",
  finger: "Tess: finger",
  band: "Tess: band",
  orderSize: "Tess: order size",
  use: "Use N for Tess’s band",
  fingerKept: "Done: Tess: finger M½",
  bandKept: "Needs care: Tess: band 6 mm flat a part of it is missing",
  orderSizeKept: "Done: Tess: order size N",
};

const COUPLE = "Tess & Rowan";

export const journeys = [
  {
    name: "a couple and its order size are there with the server gone and the browser opened anew",
    async take(phone, site) {
      await phone.open(site.url);
      await phone.follow(say.newCouple);
      await phone.write(say.firstName, "Tess");
      await phone.write(say.secondName, "Rowan");
      await phone.press(say.save);
      await phone.heading(COUPLE);

      await phone.follow(say.finger);
      await phone.write(say.sizeRead, "M½");
      await phone.press(say.addReading);
      await phone.follow(say.back);
      await phone.row(say.finger, say.fingerKept);

      await phone.follow(say.band);
      await phone.write(say.width, "6");
      await phone.choose(say.profile, say.flat);
      await phone.press(say.save);
      await phone.row(say.band, say.bandKept);

      // M½ is 53.125 mm round. A flat band of 6 mm on a gauge of 3 mm adds 0.75: 53.875, and N is 53.75.
      await phone.follow(say.orderSize);
      await phone.press(say.use);
      await phone.row(say.orderSize, say.orderSizeKept);

      await phone.kept();
      await site.stop();
      await phone.off();
      await phone.on();
      await phone.open(site.url);
      await phone.follow(say.couples);
      await phone.follow(COUPLE);
      await phone.heading(COUPLE);
      await phone.row(say.finger, say.fingerKept);
      await phone.row(say.band, say.bandKept);
      await phone.row(say.orderSize, say.orderSizeKept);
    },
  },
];
