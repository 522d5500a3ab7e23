import "../engraved.css";
import "../sound/cursor.css";
import "./pocket.css";
import "./main";
