import "./pocket.css";
import "./main";
